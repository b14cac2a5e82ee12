import type { AimedBar, AimOutcome } from "../study/aim/aim.ts";
import { problemJson } from "./json.ts";

/** Keys of the bite in reports: what is required of it is the deepest of all phases. */
const BITE_KEY = "maxMm";

/**
 * What a search came to as one plain object with stable keys; values in the unit that the key names, unknown is `null`.
 * For one goal one bar, for two the line from the best in the first goal to the best in the second; of an aim that
 * cannot be reached the nearest bar.
 */
export function aimJson(outcome: AimOutcome) {
  const { status } = outcome;
  const bars =
    status === "found" ? outcome.bars : status === "infeasible" && outcome.nearest ? [outcome.nearest] : [];
  return {
    status,
    reason: status === "refused" ? outcome.reason : null,
    message: status === "found" ? null : outcome.message,
    evaluations: status === "refused" ? 0 : outcome.evaluations,
    stopped: status !== "refused" && outcome.isStopped,
    bars: bars.map(barJson),
  };
}

function barJson({ lets, goals, limits, analysis, problems, elsewhere }: AimedBar) {
  const { lines } = analysis.source;
  return {
    lets: lets.map(({ name, from, to, reached }) => ({ name, from, to, atBound: reached })),
    goals: goals.map(({ sense, figure, atMPerS, before, after }) => ({
      sense,
      figure: figure.requirable?.name ?? figure.key,
      key: atMPerS === null ? figure.key : BITE_KEY,
      atMPerS,
      before,
      after,
    })),
    limits: limits.map(({ origin, figure, atMPerS, relation, limit, value, margin, holds, isReached }) => ({
      origin,
      figure: figure.requirable?.name ?? figure.key,
      key: atMPerS === null ? figure.key : BITE_KEY,
      atMPerS,
      relation,
      limit,
      value,
      margin,
      holds,
      reached: isReached,
    })),
    problems: problems.map((problem) => problemJson(problem, lines)),
    problemsElsewhere: elsewhere.map((problem) => problemJson(problem, lines)),
  };
}
