import type { Assessment } from "../../figures/assessment.ts";
import { type Difference, differenceOf } from "./difference.ts";

/** The bite of one bar at one closing speed, and how it stands to the reference's at the same speed. */
export interface BiteCell {
  /** The deepest bite and the mean over all starting phases. */
  readonly maxMm: number;
  readonly meanMm: number;
  readonly squareShare: number;
  readonly cleanShare: number;
  readonly toothShare: number;
  readonly idealMm: number | null;
  readonly ofMax: Difference;
  readonly ofMean: Difference;
}

/** The bite of every bar at the same closing speeds. */
export interface BiteComparison {
  readonly closingMPerS: readonly number[];
  /** For each bar its cells in the order of the speeds; `null` for one without a bite. */
  readonly bars: readonly (readonly BiteCell[] | null)[];
}

/**
 * The bite of bars at the same closing speeds; `null` where none has a bite.
 * @param closingMPerS those of the reference's approach where they are left out, or of the first bar that has a bite
 */
export function compareBite(
  bars: readonly Assessment[],
  closingMPerS: readonly number[] = sharedSpeeds(bars),
): BiteComparison | null {
  if (!bars.some(({ bite }) => bite !== null)) return null;
  const bites = bars.map(({ bite }) => bite && closingMPerS.map((speed) => bite.at(speed)));
  const scale = Math.max(...bars.map(({ section }) => section?.maxRadiusMm ?? 0));
  const reference = bites[0];
  return {
    closingMPerS,
    bars: bites.map((bite) => (bite ? bite.map((at, i) => cellOf(at, reference?.[i] ?? null, scale)) : null)),
  };
}

type Bitten = Omit<BiteCell, "ofMax" | "ofMean">;

function cellOf(at: Bitten, reference: Bitten | null, scale: number): BiteCell {
  const { maxMm, meanMm, squareShare, cleanShare, toothShare, idealMm } = at;
  return {
    maxMm,
    meanMm,
    squareShare,
    cleanShare,
    toothShare,
    idealMm,
    ofMax: differenceOf(reference?.maxMm ?? null, maxMm, "length", scale),
    ofMean: differenceOf(reference?.meanMm ?? null, meanMm, "length", scale),
  };
}

/** The closing speeds that bars are compared at; none where no bar has a bite. */
export function sharedSpeeds(bars: readonly Assessment[]): readonly number[] {
  const first = bars.find(({ bite }) => bite !== null);
  return first?.bite?.curve.map(({ closingMPerS }) => closingMPerS) ?? [];
}
