/** Balance of a turning bar: grades, what a grade allows, and what to take off. */

/** A balance grade of the standard: the largest e·ω in mm/s, and what commonly is balanced to it. */
export interface BalanceGrade {
  readonly mmPerS: number;
  readonly name: string;
  /** Examples of the standard's own table. */
  readonly usedFor: string;
}

/**
 * The balance grades of ISO 21940-11, Table 1, smoothest first. The grades are as published; of the examples those for
 * G100, G40, G16, G6.3 and G2.5 too, the others are from memory.
 */
export const BALANCE_GRADES: readonly BalanceGrade[] = [
  { mmPerS: 0.4, name: "G0.4", usedFor: "gyroscopes, spindles of high-precision systems" },
  { mmPerS: 1, name: "G1", usedFor: "grinding machine drives" },
  { mmPerS: 2.5, name: "G2.5", usedFor: "turbines, machine-tool drives" },
  { mmPerS: 6.3, name: "G6.3", usedFor: "fans, pumps, general machinery" },
  { mmPerS: 16, name: "G16", usedFor: "agricultural machinery, crushers" },
  { mmPerS: 40, name: "G40", usedFor: "car wheels, drive shafts" },
  { mmPerS: 100, name: "G100", usedFor: "complete piston engines" },
  { mmPerS: 250, name: "G250", usedFor: "crankshaft drives, unbalanced, rigidly mounted" },
  { mmPerS: 630, name: "G630", usedFor: "crankshaft drives, unbalanced, elastically mounted" },
  { mmPerS: 1600, name: "G1600", usedFor: "crankshaft drives of large slow marine engines, balanced" },
  { mmPerS: 4000, name: "G4000", usedFor: "crankshaft drives of large slow marine engines, unbalanced" },
];

/**
 * The balance grade e·ω that a bar has, in mm/s.
 * Source: definition of the grades in ISO 21940-11.
 */
export function balanceGradeMmPerS(eccentricityMm: number, radPerS: number): number {
  return eccentricityMm * radPerS;
}

/** How a grade is written: `G` and its value in mm/s, such as `G6.3`, to four digits. */
export function gradeName(mmPerS: number): string {
  return `G${Number(mmPerS.toPrecision(4))}`;
}

/** The smoothest grade of the standard that the bar still fits; `null` for a bar rougher than all of them. */
export function standardGradeFor(mmPerS: number): BalanceGrade | null {
  return BALANCE_GRADES.find((grade) => mmPerS <= grade.mmPerS * (1 + ROUNDING_OF_GRADE)) ?? null;
}

/** A bar balanced to a grade's very limit fits it, whichever way e·ω was rounded. */
const ROUNDING_OF_GRADE = 1e-12;

/**
 * The residual imbalance that a grade allows, in g·mm: U = 1000·G·m/ω with m in kg and ω in rad/s. At rest it is
 * infinite. At the grade a bar has, e·ω, it is that bar's own imbalance.
 * Source: ISO 21940-11, which writes it with n in rpm as U ≈ 9549·G·m/n; the exact factor, used here, is
 * 60 000/2π = 9549.2966.
 */
export function permissibleGMm(gradeMmPerS: number, massKg: number, radPerS: number): number {
  return (1000 * gradeMmPerS * massKg) / radPerS;
}

/**
 * The mass in g to take off the heavy side at a radius, or to add on the light side, to balance the bar. The radius is
 * that of the removed metal's own centroid and greater than 0.
 * Source: equilibrium of the static moments, m·r = U.
 */
export function massToRemoveG(imbalanceGMm: number, radiusMm: number): number {
  return imbalanceGMm / radiusMm;
}
