import type { Problem, Report } from "../language/problem.ts";

/** Collects problems and keeps the first of each code at each place: copies of a repeated path share their causes. */
export interface ProblemList {
  readonly report: Report;
  readonly problems: () => readonly Problem[];
}

export function problemList(): ProblemList {
  const byCause = new Map<string, Problem>();
  return {
    report: (problem) => {
      const cause = `${problem.code} ${problem.range.start} ${problem.range.end}`;
      if (!byCause.has(cause)) byCause.set(cause, problem);
    },
    problems: () => [...byCause.values()],
  };
}
