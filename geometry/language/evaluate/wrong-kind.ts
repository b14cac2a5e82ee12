/** What to say, and to offer, where a value is of another kind than its place needs. */
import { bareFractionFix, isBareFractionWithUnit } from "../bare-fraction.ts";
import {
  ANGLE,
  ANGULAR_SPEED,
  FREQUENCY,
  isNumber,
  powerDimension,
  productDimension,
  sameDimension,
  settle,
} from "../dimension.ts";
import { formatQuantity } from "../format-quantity.ts";
import type { Fix, Problem } from "../problem.ts";
import type { Dimension, Quantity } from "../quantity.ts";
import { dimensionName, expectedPhrase } from "../quantity-kinds.ts";
import type { Expression, NumberLiteral } from "../tree.ts";
import { unitFactor } from "../units.ts";
import { isBareArithmetic, literalOf, quoted, textOf, unitWithGap, writtenUnit } from "./expression-shape.ts";
import { failure, fix, rewrite } from "./problems.ts";

export interface WrongKind {
  readonly text: string;
  readonly expression: Expression;
  readonly got: Quantity;
  readonly expected: Dimension;
  /** The head of the message up to the kind: "The thickness is", "'sin' takes". */
  readonly subject: string;
  /** True where a number without its unit is of the wrong kind rather than unfinished, as in `sin(30)`. */
  readonly strict: boolean;
  /** The unit that the file writes values of a kind in. */
  readonly usualUnit: (dimension: Dimension) => string;
}

/** The problem of a value of the wrong kind, with every rewriting that makes it right. */
export function wrongKind(wrong: WrongKind): Problem {
  const { expression, got, expected, subject, strict } = wrong;
  const head = `${subject} ${expectedPhrase(expected)}`;
  const misreading = misread(wrong);
  if (misreading === null && isNumber(got.dimension)) {
    const unfinished = isBareArithmetic(expression) && !strict;
    return failure(
      unfinished ? "missing-unit" : "wrong-unit",
      expression.range,
      `${head}${unfinished ? noUnit(wrong) : but(wrong)}`,
      unitFixes(wrong),
    );
  }
  const { hint, fixes } = misreading ?? { hint: "", fixes: [] };
  return failure("wrong-unit", expression.range, `${head}${but(wrong)}${hint}`, fixes);
}

function noUnit({ text, expression, expected, usualUnit, got }: WrongKind): string {
  if (got.value === 0) return `; zero needs its unit too: write 0 ${usualUnit(expected)}.`;
  return `, but ${quoted(text, expression.range) ?? "this"} has no unit.`;
}

function but({ text, expression, got }: WrongKind): string {
  const name = dimensionName(got.dimension);
  const written = quoted(text, expression.range);
  const value = formatQuantity(got);
  if (written === null) return `, but this is ${name} (${value}).`;
  return literalOf(expression) ? `, but ${written} is ${name}.` : `, but ${written} is ${name} (${value}).`;
}

/** A plain number becomes a value of the kind by its unit; an angle may also be meant in radians. */
function unitFixes(wrong: WrongKind): readonly Fix[] {
  const { expression, got, expected, usualUnit } = wrong;
  const unit = usualUnit(expected);
  const zero = literalOf(expression) !== null && got.value === 0;
  const first = withUnit(wrong, unit, zero);
  const ratio = sameDimension(expected, ANGLE) && !isBareArithmetic(expression) && unit !== "rad";
  return ratio ? [first, withUnit(wrong, "rad", false)] : [first];
}

function withUnit({ text, expression }: WrongKind, unit: string, safe: boolean): Fix {
  const written = textOf(text, expression.range);
  const closed = literalOf(expression) !== null || (expression.kind === "group" && expression.unit === null);
  const newText = closed ? `${written} ${unit}` : `(${written}) ${unit}`;
  return rewrite(`Replace with '${newText}'`, expression.range, newText, safe);
}

interface Misreading {
  readonly hint: string;
  readonly fixes: readonly Fix[];
}

/** Tries the ways in which a value with a unit comes to be of the wrong kind. */
function misread(wrong: WrongKind): Misreading | null {
  return perSecond(wrong) ?? dividedByUnit(wrong) ?? doubledUnit(wrong) ?? literalUnit(wrong);
}

/** A speed over a radius is per second; the language cannot know that it turns. */
function perSecond({ text, expression, got, expected }: WrongKind): Misreading | null {
  if (!sameDimension(expected, ANGULAR_SPEED) || !sameDimension(got.dimension, FREQUENCY)) return null;
  const written = textOf(text, expression.range);
  const newText = `${isOneTerm(expression) ? written : `(${written})`} * 1 rad`;
  return {
    hint: " A speed over a radius is so many radians a second: multiply it by 1 rad.",
    fixes: [rewrite(`Replace with '${newText}'`, expression.range, newText)],
  };
}

function isOneTerm({ kind }: Expression): boolean {
  return kind === "name" || kind === "call" || kind === "group";
}

/** `1/4 in`: a unit belongs to the number before it, so this is 1 over 4 inches. */
function dividedByUnit({ text, expression, got, expected }: WrongKind): Misreading | null {
  const quotient = unwrap(expression);
  if (!isBareFractionWithUnit(quotient)) return null;
  if (isNumber(expected) || !sameDimension(got.dimension, powerDimension(expected, -1))) return null;
  const { left, right } = quotient;
  const hint = ` It reads as ${textOf(text, left.range)} ÷ (${textOf(text, right.range)}).`;
  return { hint, fixes: [bareFractionFix(text, quotient)] };
}

function unwrap(expression: Expression): Expression {
  if (expression.kind === "unary") return unwrap(expression.operand);
  return expression.kind === "group" && expression.unit === null ? unwrap(expression.inner) : expression;
}

/** `reach / 2 mm`, `reach * 2 mm`: right without the unit. */
function doubledUnit({ text, expression: whole, got, expected }: WrongKind): Misreading | null {
  const expression = unwrap(whole);
  if (expression.kind !== "binary" || (expression.operator !== "*" && expression.operator !== "/"))
    return null;
  const factor = [expression.right, expression.left].find(
    (side) => side.kind === "number" && side.unit !== null,
  );
  if (factor?.kind !== "number" || factor.unit === null) return null;
  const scale = unitFactor(factor.unit);
  const power = expression.operator === "/" && factor === expression.right ? 1 : -1;
  if (
    scale === null ||
    !sameDimension(settle(productDimension(got.dimension, scale.dimension, power)), expected)
  )
    return null;
  return { hint: "", fixes: [withoutUnit(text, factor, factor.unit)] };
}

/** `22 deg` where a length is needed: another unit, or none. */
function literalUnit({ text, expression, expected, usualUnit }: WrongKind): Misreading | null {
  const literal = literalOf(expression);
  const unit = writtenUnit(expression);
  if (literal === null || unit === null) return null;
  if (isNumber(expected)) return { hint: "", fixes: [withoutUnit(text, literal, unit)] };
  const newText = `${textOf(text, { start: expression.range.start, end: unit.range.start })}${usualUnit(expected)}`;
  return { hint: "", fixes: [rewrite(`Replace with '${newText}'`, expression.range, newText)] };
}

function withoutUnit(text: string, literal: NumberLiteral, unit: NonNullable<NumberLiteral["unit"]>): Fix {
  const gap = unitWithGap(text, unit);
  const left = text.slice(literal.range.start, gap.start);
  return fix(`Replace with '${left}'`, [{ ...gap, newText: "" }]);
}
