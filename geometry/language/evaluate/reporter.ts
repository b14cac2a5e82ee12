import { MOST_PROBLEMS, sortProblems } from "../parse/problem-list.ts";
import type { Problem, Report } from "../problem.ts";

export interface Reporter {
  readonly report: Report;
  /** What was reported, in text order; no more than anybody reads, and then one that says that there are more. */
  readonly problems: () => readonly Problem[];
}

/**
 * Collects problems. Lets are met twice, for the file and again for a variant, and what was wrong with one stays wrong:
 * of the same problem at the same place the first is kept.
 */
export function createReporter(textLength: number): Reporter {
  const found = new Map<string, Problem>();
  return {
    report: (problem) => {
      const { code, range } = problem;
      const place = `${code} ${range.start} ${range.end}`;
      if (found.size <= MOST_PROBLEMS && !found.has(place)) found.set(place, problem);
    },
    problems: () => sortProblems([...found.values()], textLength),
  };
}
