import type { Problem } from "../language/problem.ts";
import type { ProblemCode } from "../language/problem-codes.ts";

/** A figure is not within a limit, or nobody knows whether it is. */
const OF_A_LIMIT: readonly ProblemCode[] = [
  "imbalance-over-grade",
  "mass-over-class",
  "require-failed",
  "require-unknown",
];

/** What the robot around the bar does not bear. */
const OF_THE_ROBOT: readonly ProblemCode[] = [
  "budget-over-limit",
  "robot-too-light",
  "bar-in-floor",
  "strike-out-of-reach",
];

/** Whether a problem says that a figure is not within a limit. */
export function isJudgement({ code }: Pick<Problem, "code">): boolean {
  return OF_A_LIMIT.includes(code);
}

/**
 * Whether a problem makes the bar as drawn doubtful. What the bar or its robot does not live up to is the builder's
 * decision, and stops neither a cut file nor a study: it may be what the study is to mend.
 */
export function isObstacle({ severity, code }: Problem): boolean {
  return severity === "error" && !OF_A_LIMIT.includes(code) && !OF_THE_ROBOT.includes(code);
}
