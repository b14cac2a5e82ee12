import { type BiteCondition, type StrikeKind, strikesByKind } from "../../../../geometry/bite/bite.ts";
import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { fill, type PreviewStrings } from "../../strings.ts";
import { kindText } from "../strikes/strike-text.ts";
import { degreesText, lengthText } from "../units.ts";
import type { Approach } from "./scene.ts";

/** How an approach ends, in words; where it ends is told beside it. */
export function contactText(
  { contact }: Approach,
  kind: StrikeKind | null,
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  const { depthMm, strikeAngleRad } = contact;
  if (kind === null || strikeAngleRad === null) return strings.approachPasses;
  const how = kindText(kind, strings);
  return fill(strings.approachMeets, lengthText(depthMm, units), how, degreesText(strikeAngleRad));
}

/** Rounding of where two ways of landing meet. */
const NEAR_RAD = 1e-9;

/** How the contact of an approach lands; null where nothing is met. */
export function contactKind({ profile, contact }: Approach, condition: BiteCondition): StrikeKind | null {
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
