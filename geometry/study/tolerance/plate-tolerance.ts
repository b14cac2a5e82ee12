/** How far the thickness of a plate may be off. */

/** Limits of the thickness about its nominal value, in mm, and how it may differ within one plate. */
export interface PlateTolerance {
  readonly lowerMm: number;
  readonly upperMm: number;
  /** Between the thickest and the thinnest place of one plate, at most. */
  readonly withinPlateMm: number;
  /** Where the limits are from, for people. */
  readonly text: string;
}

export const PLATE_CLASSES = ["A", "B", "C", "D"] as const;
export type PlateClass = (typeof PLATE_CLASSES)[number];

/** Nominal thickness from `from` up to but not including `below`; lower and upper limit by class. */
interface Row {
  readonly from: number;
  readonly below: number;
  readonly limits: Readonly<Record<PlateClass, readonly [lower: number, upper: number]>>;
  /** For plates 600 mm to less than 2000 mm wide, the narrowest column. */
  readonly within: number;
}

/**
 * EN 10029:1991, Table 1: hot-rolled steel plate 3 mm thick or above. The edition of 2010 replaces it and is not what is
 * quoted here.
 */
const EN_10029_1991: readonly Row[] = [
  { from: 3, below: 5, limits: { A: [-0.4, 0.8], B: [-0.3, 0.9], C: [0, 1.2], D: [-0.6, 0.6] }, within: 0.8 },
  {
    from: 5,
    below: 8,
    limits: { A: [-0.4, 1.1], B: [-0.3, 1.2], C: [0, 1.5], D: [-0.75, 0.75] },
    within: 0.9,
  },
  {
    from: 8,
    below: 15,
    limits: { A: [-0.5, 1.2], B: [-0.3, 1.4], C: [0, 1.7], D: [-0.85, 0.85] },
    within: 0.9,
  },
  {
    from: 15,
    below: 25,
    limits: { A: [-0.6, 1.3], B: [-0.3, 1.6], C: [0, 1.9], D: [-0.92, 0.92] },
    within: 1.0,
  },
  {
    from: 25,
    below: 40,
    limits: { A: [-0.8, 1.4], B: [-0.3, 1.9], C: [0, 2.2], D: [-1.1, 1.1] },
    within: 1.1,
  },
  {
    from: 40,
    below: 80,
    limits: { A: [-1.0, 1.8], B: [-0.3, 2.5], C: [0, 2.8], D: [-1.4, 1.4] },
    within: 1.2,
  },
];

/** The limits of a class for a nominal thickness; `null` where the table has no row for it. */
export function plateTolerance(thicknessMm: number, plateClass: PlateClass): PlateTolerance | null {
  const row = EN_10029_1991.find(({ from, below }) => from <= thicknessMm && thicknessMm < below);
  if (!row) return null;
  const [lowerMm, upperMm] = row.limits[plateClass];
  return { lowerMm, upperMm, withinPlateMm: row.within, text: `EN 10029:1991 class ${plateClass}` };
}

/**
 * Over so many millimetres the difference within a plate is taken to run evenly: the narrowest plate of the standard. An
 * assumption; the standard says nothing of how the thickness runs.
 */
export const WEDGE_OVER_MM = 600;

/** The most that the thickness may differ across a bar of this diameter, by {@link WEDGE_OVER_MM}. */
export function wedgeAcross(diameterMm: number, { withinPlateMm }: PlateTolerance): number {
  return withinPlateMm * Math.min(1, diameterMm / WEDGE_OVER_MM);
}
