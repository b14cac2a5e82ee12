import type { Requirement } from "../design.ts";
import { SPEED } from "../dimension.ts";
import { nearestWord } from "../nearest-word.ts";
import type { Quantity } from "../quantity.ts";
import { quantity } from "../quantity-arithmetic.ts";
import type { RequirableFigure } from "../requirable.ts";
import type {
  FigureLimit,
  GradeLiteral,
  NumberLiteral,
  Statement,
  SyntaxTree,
  VariantStatement,
} from "../tree.ts";
import { textOf } from "./expression-shape.ts";
import { didYouMean, failure, fix, rewrite } from "./problems.ts";
import { closingSpeed } from "./settings.ts";
import type { Scope } from "./values.ts";

/**
 * The requirements of a variant. One of its own takes the place of the bar's for the same figure, relation and closing
 * speed; others are added. Those with a problem are left out.
 */
export function evaluateRequirements(
  scope: Scope,
  tree: SyntaxTree,
  variant: VariantStatement | null,
  figures: readonly RequirableFigure[],
): readonly Requirement[] {
  const evaluated = (statements: readonly Statement[]): readonly Requirement[] =>
    statements
      .filter((statement) => statement.kind === "require")
      .map((statement) => evaluateFigureLimit(scope, statement, figures))
      .filter((requirement) => requirement !== null);
  const own = evaluated(tree.statements);
  const changed = evaluated(variant?.body ?? []);
  const isReplaced = (a: Requirement): boolean => changed.some((b) => isOnTheSame(a, b));
  return [...own.filter((requirement) => !isReplaced(requirement)), ...changed];
}

function isOnTheSame(a: Requirement, b: Requirement): boolean {
  return a.figure === b.figure && a.relation === b.relation && a.atMPerS === b.atMPerS;
}

/** A limit on a figure, as `require` and `aim` state them; null where something is wrong with it. */
export function evaluateFigureLimit(
  scope: Scope,
  stated: FigureLimit,
  figures: readonly RequirableFigure[],
): Requirement | null {
  const found = evaluateFigure(scope, stated, figures, "required");
  if (found === null) {
    evaluateRest(scope, stated);
    return null;
  }
  const limit = evaluateLimit(scope, stated, found.figure);
  const { relation, range } = stated;
  if (limit === null || relation === null || stated.limit === null || found.atMPerS === undefined)
    return null;
  const { figure, atMPerS } = found;
  return { figure: figure.name, relation, limit, atMPerS, limitRange: stated.limit.range, range };
}

/** A figure with the closing speed it is meant at. */
export interface MeantFigure {
  readonly figure: RequirableFigure;
  /** In m/s; null where the figure takes none, `undefined` where it is wrong. */
  readonly atMPerS: number | null | undefined;
}

/**
 * The figure of a limit or a goal; null where there is none of its name.
 * @param use what the figure cannot be where it is none: "required"
 */
export function evaluateFigure(
  scope: Scope,
  stated: Pick<FigureLimit, "figure" | "at">,
  figures: readonly RequirableFigure[],
  use: string,
): MeantFigure | null {
  const figure = findFigure(scope, stated, figures, use);
  if (figure !== null) return { figure, atMPerS: evaluateSpeed(scope, stated, figure) };
  // The mistakes in what is said of nobody knows what are told all the same.
  if (stated.at !== null) scope.expressions.value(stated.at);
  return null;
}

function findFigure(
  { report }: Scope,
  { figure }: Pick<FigureLimit, "figure">,
  figures: readonly RequirableFigure[],
  use: string,
): RequirableFigure | null {
  if (figure === null) return null;
  const found = figures.find(({ name }) => name === figure.name);
  if (found !== undefined) return found;
  const names = figures.map(({ name }) => name);
  const near = nearestWord(figure.name, names);
  const { hint, fixes } = didYouMean(figure.range, near);
  const all = near === null && names.length > 0 ? ` The figures are ${names.join(", ")}.` : "";
  const message = `'${figure.name}' is not a figure that can be ${use}${hint}${all}`;
  report(failure("unknown-figure", figure.range, message, fixes));
  return null;
}

function evaluateRest({ expressions }: Scope, { limit }: FigureLimit): void {
  if (limit !== null && limit.kind !== "grade") expressions.value(limit);
}

/** The closing speed of `bite at 3 m/s` in m/s; null where the figure takes none, `undefined` where it is wrong. */
function evaluateSpeed(
  scope: Scope,
  { figure, at }: Pick<FigureLimit, "figure" | "at">,
  { name, takesSpeed }: RequirableFigure,
): number | null | undefined {
  if (at !== null && takesSpeed) return closingSpeed(scope, at, "The closing speed") ?? undefined;
  if (at === null && !takesSpeed) return null;
  if (at === null) {
    const range = figure?.range ?? { start: 0, end: 0 };
    const behind = { start: range.end, end: range.end };
    const message = `'${name}' depends on the closing speed: write ${name} at 3 m/s.`;
    const fixes = [rewrite("Insert 'at 3 m/s'", behind, " at 3 m/s")];
    scope.report(failure("missing-part", range, message, fixes));
    return undefined;
  }
  scope.expressions.value(at);
  const edit = { start: figure?.range.end ?? at.range.start, end: at.range.end, newText: "" };
  const message = `'${name}' does not depend on a closing speed.`;
  scope.report(failure("unexpected-text", at.range, message, [fix("Remove the speed", [edit])]));
  return undefined;
}

function evaluateLimit(scope: Scope, { limit }: FigureLimit, figure: RequirableFigure): Quantity | null {
  if (limit?.kind === "grade") return evaluateGrade(scope, limit, figure);
  if (figure.takesGrade && limit?.kind === "number" && limit.unit === null) {
    return refuseBareGrade(scope, limit, figure);
  }
  return scope.expressions.expect(limit, figure.dimension, `The limit of '${figure.name}' is`);
}

/** `balance <= 40`: a grade without its letter far rather than a speed without its unit. */
function refuseBareGrade({ text, report }: Scope, { range }: NumberLiteral, figure: RequirableFigure): null {
  const grade = `G${textOf(text, range)}`;
  const message = `The limit of '${figure.name}' is a balance grade such as ${figure.example}, but '${textOf(text, range)}' has no letter and no unit.`;
  report(failure("missing-unit", range, message, [rewrite(`Replace with '${grade}'`, range, grade)]));
  return null;
}

/** A balance grade is a speed in mm/s, by ISO 21940-11. */
function evaluateGrade({ report }: Scope, grade: GradeLiteral, figure: RequirableFigure): Quantity | null {
  if (figure.takesGrade) return quantity(grade.value, SPEED);
  const message = `A balance grade is no limit for '${figure.name}'; write a value such as '${figure.example}'.`;
  report(failure("wrong-unit", grade.range, message));
  return null;
}
