import type { Problem } from "../problem.ts";

/** More than anybody reads; the rest appear once these are mended. Bounds the time and memory that garbage costs. */
export const MOST_PROBLEMS = 500;

/** Problems as they are found, no more than can be shown. */
export interface ProblemList {
  /** Adds a problem, which is not even made once the list is full. */
  make(problem: () => Problem): void;
  /** True once there are more problems than can be shown. */
  readonly isFull: boolean;
  readonly found: readonly Problem[];
}

/** Keeps one problem more than can be shown, so that it is known that there are too many. */
export function createProblemList(): ProblemList {
  const found: Problem[] = [];
  return {
    make: (problem) => {
      if (found.length <= MOST_PROBLEMS) {
        found.push(problem());
      }
    },
    get isFull() {
      return found.length > MOST_PROBLEMS;
    },
    found,
  };
}

/** Problems in the order of the text, at most `MOST_PROBLEMS` of them, and then one that says that there are more. */
export function sortProblems(problems: readonly Problem[], textLength: number): readonly Problem[] {
  const sorted = [...problems].sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
  const firstLeftOut = sorted[MOST_PROBLEMS];
  if (firstLeftOut === undefined) {
    return sorted;
  }
  return [...sorted.slice(0, MOST_PROBLEMS), tooMany(firstLeftOut.range.start, textLength)];
}

function tooMany(start: number, end: number): Problem {
  return {
    severity: "error",
    code: "too-many-problems",
    message: `Only the first ${MOST_PROBLEMS} problems are listed; the rest appear once these are mended.`,
    range: { start, end },
    fixes: [],
  };
}
