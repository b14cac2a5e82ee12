import { type KindOfStrike, strikesByKind } from "../../../../geometry/bite/bite.ts";
import type { View } from "../../protocol.ts";
import { chosenIndex, type PageState } from "../page-state.ts";
import { shownProfile } from "./shown-profile.ts";

/** What strikes at one closing speed of the curve. */
export interface ShownStrikes {
  readonly closingMPerS: number;
  readonly passedShare: number;
  /** Most struck first. */
  readonly strikes: readonly KindOfStrike[];
}

const known = new WeakMap<View, Map<number, ShownStrikes>>();

/** The strikes at the speed that is read in the chart, worked out once for each speed of a view; null without a bite. */
export function shownStrikes(state: PageState): ShownStrikes | null {
  const { view } = state;
  const index = chosenIndex(state);
  const point = view?.bite?.curve[index];
  const profile = shownProfile(view);
  if (!view?.bite || !point || !profile) return null;
  const ofView = known.get(view) ?? new Map<number, ShownStrikes>();
  known.set(view, ofView);
  const { radPerS, squareStrikeRad } = view.bite;
  const { closingMPerS, passedShare } = point;
  const shown = ofView.get(index) ?? {
    closingMPerS,
    passedShare,
    strikes: [...strikesByKind(profile, { closingMPerS, radPerS, squareStrikeRad })].sort(
      (a, b) => b.share - a.share,
    ),
  };
  ofView.set(index, shown);
  return shown;
}
