import type { Analysis } from "../analysis/analyse.ts";
import { statedLimits } from "../language/stated-limits.ts";

/** How far the centroid may be from the spin axis. */
export interface NeededBalance {
  /** What the file requires, or else the settings expect. */
  readonly neededMm: number;
  /** What values are rounded to: the needed one, or G6.3 where that is finer. */
  readonly aimMm: number;
  /** The needed balance as it is told: `G16`. */
  readonly text: string;
}

/** Of rotors in general, such as fans (ISO 21940-11): finer is worth no more digits in the file. */
const AIMED_GRADE = 6.3;
/** Without a spin there is no grade: a hundredth of a millimetre is what a shop keeps. */
const WITHOUT_SPIN_MM = 0.01;

/** From the requirements of the file on `balance` and `imbalance`, and the grade expected where it has none. */
export function neededBalance({ design, assessment }: Analysis): NeededBalance {
  const { mass, settings } = assessment;
  const radPerS = design.spin?.radPerS ?? 0;
  const limits = statedLimits(design).flatMap(({ figure, relation, limit }): Limit[] => {
    if (relation !== "<=") return [];
    if (figure === "balance" && radPerS > 0) return [gradeLimit(limit.value, radPerS)];
    // Base unit of an imbalance: kg·mm.
    if (figure === "imbalance" && mass)
      return [{ mm: limit.value / mass.massKg, text: `${Number((limit.value * 1000).toPrecision(4))} g·mm` }];
    return [];
  });
  const isStated = limits.length > 0;
  if (!isStated && radPerS > 0) limits.push(gradeLimit(settings.balanceGrade, radPerS));
  const [strictest = { mm: WITHOUT_SPIN_MM, text: `${WITHOUT_SPIN_MM} mm` }] = limits.sort(
    (a, b) => a.mm - b.mm,
  );
  const aimedMm = radPerS > 0 ? AIMED_GRADE / radPerS : WITHOUT_SPIN_MM;
  return { neededMm: strictest.mm, aimMm: Math.min(strictest.mm, aimedMm), text: strictest.text };
}

interface Limit {
  readonly mm: number;
  readonly text: string;
}

/** e = G/ω, by the definition of the grades in ISO 21940-11. */
function gradeLimit(gradeMmPerS: number, radPerS: number): Limit {
  return { mm: gradeMmPerS / radPerS, text: `G${Number(gradeMmPerS.toPrecision(4))}` };
}
