/** What expressions look like, apart from what they are worth. */
import type { TextRange } from "../text.ts";
import type { Expression, NumberLiteral, UnitExpression } from "../tree.ts";
import { CONSTANT_NAMES } from "../vocabulary.ts";

/** Visits every expression within an expression, itself first; by a list, so that no depth overflows the stack. */
export function visitParts(expression: Expression, visit: (part: Expression) => void): void {
  const waiting = [expression];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    visit(next);
    for (const operand of operandsOf(next)) waiting.push(operand);
  }
}

const NONE: readonly Expression[] = [];

function operandsOf(expression: Expression): readonly Expression[] {
  switch (expression.kind) {
    case "number":
    case "name":
      return NONE;
    case "unary":
      return [expression.operand];
    case "binary":
      return [expression.right, expression.left];
    case "call":
      return [...expression.args].reverse();
    case "group":
      return [expression.inner];
  }
}

/** True where an expression is written with numbers alone: no lets, no functions, no units. */
export function isBareArithmetic(expression: Expression): boolean {
  let bare = true;
  visitParts(expression, (part) => {
    const named = part.kind === "call" || (part.kind === "name" && !isConstant(part.name));
    const measured = (part.kind === "number" || part.kind === "group") && part.unit !== null;
    if (named || measured) bare = false;
  });
  return bare;
}

export function isConstant(name: string): boolean {
  return (CONSTANT_NAMES as readonly string[]).includes(name);
}

/** The number of `12 mm` and `-12 mm`; null for anything else. */
export function literalOf(expression: Expression): NumberLiteral | null {
  if (expression.kind === "unary") return literalOf(expression.operand);
  return expression.kind === "number" ? expression : null;
}

/** The unit that a literal value is written in: of `12 mm`, `-12 mm` and `(1/4) in`. */
export function writtenUnit(expression: Expression): UnitExpression | null {
  if (expression.kind === "unary") return writtenUnit(expression.operand);
  return expression.kind === "number" || expression.kind === "group" ? expression.unit : null;
}

/** The text from the end of a value to the end of its unit: what to take out to be left without the unit. */
export function unitWithGap(text: string, unit: UnitExpression): TextRange {
  let start = unit.range.start;
  while (start > 0 && /\s/.test(text.charAt(start - 1))) start -= 1;
  return { start, end: unit.range.end };
}

export function textOf(text: string, { start, end }: TextRange): string {
  return text.slice(start, end);
}

/** An expression as it can be quoted in a message; null where it is too long for that. */
export function quoted(text: string, range: TextRange): string | null {
  const written = textOf(text, range);
  return written.length <= QUOTABLE && !/[\n\r`]/.test(written) ? `'${written}'` : null;
}

/** Longer stretches of text are called "this": the editor underlines them anyway. */
const QUOTABLE = 40;
