import { type Analysis, analyse } from "../analysis/analyse.ts";
import type { Source } from "../analysis/source.ts";
import type { Settings } from "../figures/settings.ts";
import type { Problem } from "../language/problem.ts";

/** Every variant of a source worked out, the bar as it stands first. */
export function analyseAll(source: Source, settings: Partial<Settings>): readonly Analysis[] {
  return [null, ...source.variants].map((variant) => analyse(source, { variant, settings }));
}

/**
 * The errors and warnings that a changed file has, in one of its variants, and the file before had not. A problem is
 * known again by its code and by the text that it stands at, which a change of numbers elsewhere leaves alone. The
 * expected balance is left out: who balances one variant knows that the others may need their own values.
 */
export function newProblems(before: readonly Analysis[], after: readonly Analysis[]): readonly Problem[] {
  return after.flatMap((analysis, index) => {
    const known = counted(before[index]);
    return analysis.problems.filter((problem) => {
      const isExpectation = problem.code === "imbalance-over-grade" && problem.severity === "warning";
      if (problem.severity === "information" || isExpectation) return false;
      const key = keyOf(problem, analysis);
      const left = known.get(key) ?? 0;
      known.set(key, left - 1);
      return left <= 0;
    });
  });
}

function counted(analysis: Analysis | undefined): Map<string, number> {
  const counts = new Map<string, number>();
  for (const problem of analysis?.problems ?? []) {
    const key = keyOf(problem, analysis);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

function keyOf({ severity, code, range }: Problem, analysis: Analysis | undefined): string {
  return `${severity} ${code} ${analysis?.source.text.slice(range.start, range.end)}`;
}
