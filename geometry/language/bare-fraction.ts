import type { Fix } from "./problem.ts";
import type { BinaryExpression, Expression, NumberLiteral } from "./tree.ts";

/** `1/4 in` as the parser reads it: a plain whole number over a whole number with a unit. */
export interface BareFraction extends BinaryExpression {
  readonly operator: "/";
  readonly right: NumberLiteral;
}

/**
 * True for `1/4 in` and `-1/4 in`, which by the rules is 1 ÷ (4 in) and almost certainly meant as a quarter of an inch.
 * Reports nothing: the evaluation, which sees a unit of the wrong kind, offers `bareFractionFix`.
 */
export function isBareFractionWithUnit(expression: Expression): expression is BareFraction {
  if (expression.kind !== "binary" || expression.operator !== "/") {
    return false;
  }
  const { left, right } = expression;
  const above = left.kind === "unary" ? left.operand : left;
  const isAbovePlain = above.kind === "number" && above.unit === null && Number.isInteger(above.value);
  return isAbovePlain && right.kind === "number" && right.unit !== null && Number.isInteger(right.value);
}

/** Puts the fraction in parentheses: `(1/4) in`. `text` is the text that the expression was read from. */
export function bareFractionFix(text: string, { range, right }: BareFraction): Fix {
  const unitStart = right.unit?.range.start ?? right.range.end;
  const fraction = text.slice(range.start, unitStart).trimEnd();
  const unit = text.slice(unitStart, right.range.end);
  return {
    title: `Replace with '(${fraction}) ${unit}'`,
    edits: [
      { start: range.start, end: range.start, newText: "(" },
      { start: range.start + fraction.length, end: unitStart, newText: ") " },
    ],
    safe: true,
  };
}
