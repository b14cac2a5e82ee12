import type { Assessment } from "../../figures/assessment.ts";
import type { FigureValue, Measure } from "../../figures/figure.ts";

/**
 * Two values are the same within rounding when they differ by no more than this share of their size. The least exact
 * figure, the mean bite, is good to 1e-9; what is cut, weighed or timed is known to a thousandth or so.
 */
const ROUNDING_SHARE = 1e-8;

const FULL_TURN_DEG = 360;

/**
 * How large the parts are that a figure is the sum of. What is left of a balance of large parts (the centroid of a
 * symmetrical bar) is rounding of the parts, however it compares with itself.
 */
export function partsScale(measure: Measure | null, { section, mass, design }: Assessment): number {
  const radiusMm = section?.maxRadiusMm ?? 0;
  const massKg = mass?.massKg ?? 0;
  const radPerS = design.spin?.radPerS ?? 0;
  switch (measure) {
    case "length":
    case "point":
    case "bounds":
      return radiusMm;
    case "imbalance":
      return massKg * 1000 * radiusMm;
    case "grade":
      return radiusMm * radPerS;
    case "force":
      return massKg * (radiusMm / 1000) * radPerS ** 2;
    case "angle":
      return FULL_TURN_DEG;
    default:
      return 0;
  }
}

/** How a value stands to the reference's. */
export interface Difference {
  /**
   * The value less the reference's, in the unit of both, in each of its numbers; `null` where there is no such thing:
   * one is not known, or they are words.
   */
  readonly difference: FigureValue;
  /** In per cent of the reference's magnitude; `null` where not known, and for a reference of 0. */
  readonly percent: number | null;
  /** Whether they are the same within rounding. Two that are not known are the same, one is not. */
  readonly same: boolean;
}

/** @param scale of the parts, see {@link partsScale} */
export function differenceOf(
  reference: FigureValue,
  value: FigureValue,
  measure: Measure | null,
  scale: number,
): Difference {
  const difference = lessReference(reference, value, measure === "angle" ? withinHalfTurn : unchanged);
  const tolerance = ROUNDING_SHARE * Math.max(largestIn(reference), largestIn(value), scale);
  return {
    difference,
    percent: percentOf(reference, difference, measure, ROUNDING_SHARE * scale),
    same: difference === null ? reference === value : largestIn(difference) <= tolerance,
  };
}

/** Sizes of nothing but a number; a direction has no size to be a share of. */
function percentOf(
  reference: FigureValue,
  difference: FigureValue,
  measure: Measure | null,
  nil: number,
): number | null {
  if (typeof reference !== "number" || typeof difference !== "number" || measure === "angle") return null;
  return Math.abs(reference) <= nil ? null : (100 * difference) / Math.abs(reference);
}

function lessReference(
  reference: FigureValue,
  value: FigureValue,
  turned: (difference: number) => number,
): FigureValue {
  if (typeof reference === "number" && typeof value === "number") return turned(value - reference);
  const [from, to] = [partsOf(reference), partsOf(value)];
  if (!from || !to || from.keys.join() !== to.keys.join()) return null;
  const parts = from.keys.map((key, i) => [
    key,
    lessReference(from.values[i] ?? null, to.values[i] ?? null, turned),
  ]);
  return Array.isArray(value) ? parts.map(([, part]) => part ?? null) : Object.fromEntries(parts);
}

function partsOf(value: FigureValue) {
  if (typeof value !== "object" || value === null) return null;
  return { keys: Object.keys(value), values: Object.values<FigureValue>(value) };
}

function largestIn(value: FigureValue): number {
  if (typeof value === "number") return Math.abs(value);
  return Math.max(0, ...(partsOf(value)?.values.map(largestIn) ?? []));
}

function unchanged(difference: number): number {
  return difference;
}

/** The shorter way round. */
function withinHalfTurn(differenceDeg: number): number {
  return differenceDeg - FULL_TURN_DEG * Math.round(differenceDeg / FULL_TURN_DEG);
}
