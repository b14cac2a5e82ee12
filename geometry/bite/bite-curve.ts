import { advanceMmPerRad } from "./approach.ts";
import { type StruckBite, struckAt } from "./bite-at.ts";
import type { BiteProfile } from "./bite-profile.ts";

/** The bite with the closing speed it belongs to. */
export interface BitePoint extends StruckBite {
  readonly closingMPerS: number;
}

/** The closing speeds to study. */
export interface BiteRange {
  readonly fromMPerS: number;
  readonly toMPerS: number;
  /** How many speeds, both ends among them. */
  readonly count: number;
  readonly radPerS: number;
  readonly squareStrikeRad: number;
}

/** The bite at evenly spaced closing speeds, the first and the last exactly as given. */
export function biteCurve(profile: BiteProfile, range: BiteRange): BitePoint[] {
  const { fromMPerS, toMPerS, count, radPerS, squareStrikeRad } = range;
  const teeth = profile.teeth(squareStrikeRad);
  return Array.from({ length: count }, (_, i) => {
    const share = count > 1 ? i / (count - 1) : 0;
    const closingMPerS = fromMPerS * (1 - share) + toMPerS * share;
    return struckAt(profile, teeth, advanceMmPerRad({ closingMPerS, radPerS }), { closingMPerS });
  });
}
