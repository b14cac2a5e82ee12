import { type StrikeKind, strikesByKind } from "../../../../geometry/bite/bite.ts";
import type { View } from "../../protocol.ts";
import { shownProfile } from "../strikes/shown-profile.ts";
import { type Approach, approachOf } from "./scene.ts";

/** What the scrubbers ask for. */
export interface Asked {
  readonly phaseDeg: number;
  readonly closingMPerS: number;
}

/** An approach worked out, with how its contact lands; null where nothing is met. */
export interface Worked {
  readonly approach: Approach;
  readonly kind: StrikeKind | null;
}

/** Work out one approach to the drawn bar; null without a bite. */
export function workOut(view: View | null, { phaseDeg, closingMPerS }: Asked): Worked | null {
  const profile = shownProfile(view);
  if (!view?.bite || !profile) return null;
  const { radPerS, squareStrikeRad } = view.bite;
  const approach = approachOf(profile, { closingMPerS, radPerS }, (phaseDeg * Math.PI) / 180);
  return { approach, kind: kindOf(approach, { closingMPerS, radPerS, squareStrikeRad }) };
}

/** Rounding of where two ways of landing meet. */
const NEAR_RAD = 1e-9;

function kindOf(
  { profile, contact }: Approach,
  condition: Parameters<typeof strikesByKind>[1],
): StrikeKind | null {
  const { place, strikeAngleRad } = contact;
  if (place === null || strikeAngleRad === null) return null;
  const own = strikesByKind(profile, condition).filter(
    (strike) => strike.place.kind === place.kind && strike.place.index === place.index,
  );
  const fitting = own.find(
    ({ strikeAngleRad: { least, most } }) =>
      strikeAngleRad >= least - NEAR_RAD && strikeAngleRad <= most + NEAR_RAD,
  );
  return (fitting ?? own[0])?.kind ?? "off";
}
