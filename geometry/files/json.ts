import type { Analysis } from "../analysis/analyse.ts";
import { wantedDepths } from "../analysis/wanted-depths.ts";
import type { LineIndex } from "../language/line-index.ts";
import type { Problem } from "../language/problem.ts";

/** A problem as scripts read it: line and column from 1. */
export function problemJson(problem: Problem, lines: LineIndex) {
  const { severity, code, message, range } = problem;
  return { severity, code, message, ...lines.position(range.start) };
}

/** The whole analysis as one plain object with stable keys, units in the names; unknown values are `null`. */
export function analysisJson(analysis: Analysis) {
  const { source, variant, design, figures, problems } = analysis;
  return {
    bar: design.name,
    variant,
    ...figures,
    bite: { ...figures.bite, forDepth: wantedDepths(analysis.assessment, 1) },
    problems: problems.map((problem) => problemJson(problem, source.lines)),
  };
}
