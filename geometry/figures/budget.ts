/** The weigh-in budget: the bar by its outline and every part by what the file says of it. */
import type { BudgetDesign, BudgetPart } from "../language/design.ts";
import type { Assessment } from "./assessment.ts";

export interface BudgetSums {
  /** Of all parts, the bar apart; null where one of them is wrong. */
  readonly partsMassKg: number | null;
  /** With the bar. */
  readonly totalMassKg: number | null;
  readonly limitKg: number | null;
  /** Positive while the total is within the limit. */
  readonly marginKg: number | null;
  readonly scaleMassKg: number | null;
  /** The reading less the total: positive where the robot is heavier than its parts say. */
  readonly scaleDifferenceKg: number | null;
}

/** What the robot weighs by the file; null for a file without a budget. */
export function budgetSums({
  design: { budget },
  mass,
}: Pick<Assessment, "design" | "mass">): BudgetSums | null {
  if (budget === null) return null;
  const partsMassKg = budget.isWhole ? sumOf(budget.parts.map(partMassKg)) : null;
  const totalMassKg = mass === null || partsMassKg === null ? null : mass.massKg + partsMassKg;
  const limitKg = budget.limitKg?.value ?? null;
  const scaleMassKg = budget.scaleKg?.value ?? null;
  return {
    partsMassKg,
    totalMassKg,
    limitKg,
    marginKg: less(limitKg, totalMassKg),
    scaleMassKg,
    scaleDifferenceKg: less(scaleMassKg, totalMassKg),
  };
}

/** Of all of its kind. */
export function partMassKg({ massKg, count }: BudgetPart): number {
  return massKg * count;
}

/** What would be won by leaving a part off, all of its kind. */
export interface LeftOff {
  readonly part: BudgetPart;
  readonly savesKg: number;
  /** The margin to the limit without it; null where that is not known. */
  readonly marginKg: number | null;
}

/**
 * The parts that may be left off, what saves most first: the spare ones, or all where none is. Of equals the one that
 * is written first comes first.
 */
export function leaveOff(budget: BudgetDesign, marginKg: number | null): readonly LeftOff[] {
  const spare = budget.parts.filter(({ isSpare }) => isSpare);
  return (spare.length > 0 ? spare : budget.parts)
    .map((part) => ({ part, savesKg: partMassKg(part) }))
    .sort((a, b) => b.savesKg - a.savesKg)
    .map(({ part, savesKg }) => ({ part, savesKg, marginKg: marginKg === null ? null : marginKg + savesKg }));
}

function less(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : a - b;
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
