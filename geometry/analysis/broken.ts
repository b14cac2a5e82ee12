import type { Problem } from "../language/problem.ts";
import type { ProblemCode } from "../language/problem-codes.ts";
import type { Statement, StatementKind } from "../language/tree.ts";
import { BLOCK_WORDS } from "../language/vocabulary.ts";
import type { Analysis } from "./analyse.ts";

/**
 * Errors of a shape that could be built, and judgements on it: the drawing is right, and shows what is wrong. All
 * other errors mean that part of the text was passed over.
 */
const OF_A_WHOLE_SHAPE: readonly ProblemCode[] = [
  "loop-crosses-itself",
  "axis-outside",
  "bore-missing",
  "hole-outside",
  "holes-touch",
  "hole-too-small",
  "thin-bridge",
  "too-many-segments",
  "outside-bounds",
  "unused-name",
  "imbalance-over-grade",
  "mass-over-class",
  "require-failed",
  "require-unknown",
  "budget-over-limit",
  "target-passes",
  "missing-thickness",
  "missing-material",
];

/** Statements that cannot change the shape, however broken they are. */
const SHAPELESS: readonly StatementKind[] = [
  "bar",
  "thickness",
  "material",
  "density",
  "yield",
  "spin",
  "approach",
  "target",
  "require",
  "balance",
  "aim",
  ...BLOCK_WORDS,
];

/** Whether the text is so broken that its outline is not what the builder means: half typed, most often. */
export function isBroken({ outline, problems, source }: Analysis): boolean {
  if (!outline) return true;
  return problems.some((problem) => harmsShape(problem, source.tree.statements));
}

function harmsShape({ severity, code, range }: Problem, statements: readonly Statement[]): boolean {
  if (severity !== "error" || OF_A_WHOLE_SHAPE.includes(code)) return false;
  const around = statements.find((statement) => holds(statement.range, range));
  return around === undefined || !SHAPELESS.includes(around.kind);
}

function holds(outer: Statement["range"], inner: Problem["range"]): boolean {
  return outer.start <= inner.start && inner.end <= outer.end;
}
