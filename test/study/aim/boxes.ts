/** Problems in plain numbers, of which the answer is known, for the searches behind an aim. */
import type { Measured, MeasuredSteps, Place } from "../../../geometry/study/aim/rating.ts";

export interface BoxProblem {
  readonly least: readonly number[];
  readonly most: readonly number[];
  /** Goals to be made small, and limits, each at most 0 where it holds; null where nothing can be measured. */
  at(x: readonly number[]): { readonly goals: readonly number[]; readonly limits: readonly number[] } | null;
  /** What the checker would refuse; nothing where it is left out. */
  refuses?(x: readonly number[]): boolean;
}

export function valuesOf({ least, most }: BoxProblem, at: Place): readonly number[] {
  return at.map((share, i) => (least[i] ?? 0) + share * ((most[i] ?? 1) - (least[i] ?? 0)));
}

export function measureOf(problem: BoxProblem, at: Place): Measured | null {
  const x = valuesOf(problem, at);
  const found = problem.at(x);
  if (found === null) return null;
  const { goals, limits } = found;
  return {
    goals: goals.map((value) => ({ value, smooth: value })),
    excess: limits,
    smooth: limits,
    faults: () => (problem.refuses?.(x) ? 1 : 0),
  };
}

/** Runs a search to its end, or to so many measurements. */
export function runSearch<Result>(
  problem: BoxProblem,
  steps: MeasuredSteps<Result>,
): { readonly result: Result; readonly count: number } {
  let count = 0;
  let next = steps.next();
  while (next.done !== true) {
    count += 1;
    next = steps.next(measureOf(problem, next.value));
  }
  return { result: next.value, count };
}
