/** How far a cut dimension may be off. */

/** Limit deviation in mm, to both sides, of a dimension of so many mm; `null` where the source has none. */
export interface CutTolerance {
  limitMm(nominalMm: number): number | null;
  /** Where it is from, for people. */
  readonly text: string;
}

/** Nominal dimensions from one of these up to but not including the next. */
const FROM_MM = [3, 10, 35, 125, 315, 1000, 2000] as const;

/** Workpieces thicker than `above` up to `upTo`; the limits of the columns that start at `FROM_MM`. */
interface Row {
  readonly above: number;
  readonly upTo: number;
  readonly limits: readonly (number | null)[];
}

/** ISO 9013 (thermal cutting), tolerance class 1. Above 25 mm the table has no limit below 10 mm. */
const ISO_9013_CLASS_1: readonly Row[] = [
  { above: 1, upTo: 3.15, limits: [0.15, 0.2, 0.25, 0.25, 0.35, 0.4] },
  { above: 3.15, upTo: 6.3, limits: [0.2, 0.25, 0.25, 0.3, 0.4, 0.45] },
  { above: 6.3, upTo: 10, limits: [0.25, 0.3, 0.3, 0.35, 0.45, 0.55] },
  { above: 10, upTo: 15, limits: [0.3, 0.35, 0.4, 0.45, 0.55, 0.65] },
  { above: 15, upTo: 20, limits: [0.4, 0.4, 0.45, 0.55, 0.75, 0.85] },
  { above: 20, upTo: 25, limits: [0.45, 0.5, 0.6, 0.7, 0.9, 1.1] },
  { above: 25, upTo: 32, limits: [null, 0.7, 0.7, 0.8, 1.0, 1.6] },
  { above: 32, upTo: 50, limits: [null, 0.7, 0.7, 0.8, 1.0, 1.6] },
];

/** Class 1 for a plate of this thickness; `null` where the table has no row for it. */
export function cutClass1(thicknessMm: number): CutTolerance | null {
  const row = ISO_9013_CLASS_1.find(({ above, upTo }) => above < thicknessMm && thicknessMm <= upTo);
  if (!row) return null;
  return {
    text: "ISO 9013 tolerance class 1",
    limitMm(nominalMm) {
      // Smaller dimensions than the table's take its smallest: nothing is cut finer for being small.
      const column = FROM_MM.findIndex((_, i) => nominalMm < (FROM_MM[i + 1] ?? Number.POSITIVE_INFINITY));
      return row.limits[column] ?? row.limits.find((limit) => limit !== null && column === 0) ?? null;
    },
  };
}

/** The same limit for every dimension, as a shop may state it. */
export function cutWithin(limitMm: number): CutTolerance {
  return { text: `±${Number(limitMm.toFixed(4))} mm on every dimension`, limitMm: () => limitMm };
}
