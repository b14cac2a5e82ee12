import type { Problem } from "../language/problem.ts";
import type { ProblemCode } from "../language/problem-codes.ts";

/** What the bar does not live up to is no obstacle: balance may be just that. What makes its shape doubtful is. */
const JUDGEMENTS: readonly ProblemCode[] = [
  "imbalance-over-grade",
  "mass-over-class",
  "require-failed",
  "require-unknown",
];

/** Whether a problem has to be mended before a study of the bar means anything. */
export function isObstacle({ severity, code }: Problem): boolean {
  return severity === "error" && !isJudgement({ code });
}

/** Whether a problem says that a figure is not within a limit. */
export function isJudgement({ code }: Pick<Problem, "code">): boolean {
  return JUDGEMENTS.includes(code);
}
