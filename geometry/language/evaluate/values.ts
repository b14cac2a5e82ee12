/** Values that a statement needs: of the right kind, and within what makes sense. */
import type { Located } from "../design.ts";
import { ANGLE, LENGTH, NUMBER } from "../dimension.ts";
import { formatQuantity } from "../format-quantity.ts";
import { formatNumber } from "../number-text.ts";
import type { Fix } from "../problem.ts";
import type { Dimension, Quantity } from "../quantity.ts";
import type { Expression } from "../tree.ts";
import { literalOf, textOf, writtenUnit } from "./expression-shape.ts";
import type { Expressions } from "./expressions.ts";
import { failure, rewrite } from "./problems.ts";
import type { Workings } from "./workings.ts";

/** What the statements of a file are evaluated with. */
export interface Scope extends Pick<Workings, "text" | "report" | "usualUnit"> {
  readonly expressions: Expressions;
}

/** What a value may be, in base units; messages give the limits in `unit`. */
export interface Limits {
  readonly dimension: Dimension;
  readonly unit: string;
  /** The value has to be at least this, or more than this where `above` says so. */
  readonly least: number;
  readonly above: boolean;
  /** Well beyond anything that is made: it keeps what is computed from the value finite. */
  readonly most: number;
  /** Whole sentences on why less, or more, cannot be. */
  readonly whyNotLess?: string | undefined;
  readonly whyNotMore?: string | undefined;
}

/** A hundred metres: far beyond any bar, and far within what doubles square and cube without loss. */
const MOST_MM = 1e5;
/** Angles beyond are so many turns that the digits of a direction are lost. */
const MOST_RAD = 1e4;
const COORDINATE: Limits = { dimension: LENGTH, unit: "mm", least: -MOST_MM, above: false, most: MOST_MM };
const SIZE: Limits = { dimension: LENGTH, unit: "mm", least: 0, above: true, most: MOST_MM };
const SIZE_OR_ZERO: Limits = { ...SIZE, above: false };
const DIRECTION: Limits = { dimension: ANGLE, unit: "rad", least: -MOST_RAD, above: false, most: MOST_RAD };

/** A coordinate or offset, in mm, of either sign. `what` begins the messages: "x", "The offset". */
export function coordinate(scope: Scope, expression: Expression | null, what: string): number | null {
  return within(scope, expression, what, COORDINATE)?.value ?? null;
}

/** An angle, in rad. */
export function angle(scope: Scope, expression: Expression | null, what: string): number | null {
  return within(scope, expression, what, DIRECTION)?.value ?? null;
}

/** A length that has to be more than nothing, in mm. */
export function size(scope: Scope, expression: Expression | null, what: string): Located<number> | null {
  return located(within(scope, expression, what, SIZE), expression);
}

/** A length that may be nothing, in mm. */
export function sizeOrZero(scope: Scope, expression: Expression | null, what: string): number | null {
  return within(scope, expression, what, SIZE_OR_ZERO)?.value ?? null;
}

/** A value with its place and the unit that it is written in. */
export function located(worth: Quantity | null, expression: Expression | null): Located<number> | null {
  if (worth === null || expression === null) return null;
  const unit = writtenUnit(expression);
  return { value: worth.value, range: expression.range, unit: unit === null ? null : unit.text };
}

/** A value of the kind and within the limits; null where a problem was reported. */
export function within(
  scope: Scope,
  expression: Expression | null,
  what: string,
  limits: Limits,
): Quantity | null {
  const worth = scope.expressions.expect(expression, limits.dimension, `${what} is`);
  if (expression === null || worth === null) return worth;
  const { least, most, above } = limits;
  const low = above ? worth.value <= least : worth.value < least;
  if (!low && worth.value <= most) return worth;
  const value = formatQuantity(worth, writtenUnit(expression)?.text);
  const why = low ? limits.whyNotLess : limits.whyNotMore;
  const message = `${what} has to be ${boundPhrase(limits, low)}; this is ${value}.${why ? ` ${why}` : ""}`;
  scope.report(failure("out-of-range", expression.range, message, low ? withoutSign(scope, expression) : []));
  return null;
}

function boundPhrase({ dimension, unit, least, most, above }: Limits, low: boolean): string {
  const bound = formatQuantity({ value: low ? least : most, dimension }, unit);
  if (!low) return `at most ${bound}`;
  return `${above ? "more than" : "at least"} ${bound}`;
}

/** `-12 mm` where only `12 mm` makes sense. */
function withoutSign({ text }: Scope, expression: Expression): readonly Fix[] {
  if (expression.kind !== "unary" || expression.operator !== "-") return [];
  const { operand } = expression;
  const literal = literalOf(expression);
  if (operand !== literal || literal.value === 0) return [];
  const newText = textOf(text, operand.range);
  return [rewrite(`Replace with '${newText}'`, expression.range, newText)];
}

/** Quotients such as 360/90 come out whole to within rounding, and are taken as whole. */
const WHOLE_TOLERANCE = 1e-9;

/** A whole number from `least` to `most`; null where a problem was reported. */
export function wholeNumber(
  scope: Scope,
  expression: Expression | null,
  what: string,
  least: number,
  most: number,
): number | null {
  const worth = scope.expressions.expect(expression, NUMBER, `${what} is`);
  if (expression === null || worth === null) return null;
  const whole = Math.round(worth.value);
  const isWhole = Math.abs(worth.value - whole) <= WHOLE_TOLERANCE;
  if (isWhole && whole >= least && whole <= most) return whole;
  const message =
    `${what} has to be a whole number from ${least} to ${most}; ` + `this is ${formatNumber(worth.value)}.`;
  const near = String(Math.min(most, Math.max(least, whole)));
  const fixes = literalOf(expression) ? [rewrite(`Replace with '${near}'`, expression.range, near)] : [];
  scope.report(failure("out-of-range", expression.range, message, fixes));
  return null;
}
