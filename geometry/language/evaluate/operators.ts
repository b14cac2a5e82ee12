/** Sums, products and powers of values: what they give, and which side is to blame where they give nothing. */
import { isNumber, NUMBER, sameDimension } from "../dimension.ts";
import type { Dimension, Quantity } from "../quantity.ts";
import { add, divide, multiply, power, settled, subtract } from "../quantity-arithmetic.ts";
import type { BinaryExpression } from "../tree.ts";
import { quoted } from "./expression-shape.ts";
import { failure } from "./problems.ts";
import { blame, fail, finite, type Workings } from "./workings.ts";

export function isSum({ operator }: BinaryExpression): boolean {
  return operator === "+" || operator === "-";
}

/**
 * The value of `left operator right`, both known. Products keep their radians (see `settle`); whoever uses the value
 * drops them. `hint` is the kind that the place is likely to need.
 */
export function combine(
  workings: Workings,
  expression: BinaryExpression,
  left: Quantity,
  right: Quantity,
  hint: Dimension | undefined,
): Quantity | null {
  switch (expression.operator) {
    case "+":
    case "-":
      return sum(workings, expression, settled(left), settled(right), hint);
    case "*":
      return finite(workings, multiply(left, right), expression);
    case "/":
      return quotient(workings, expression, left, right);
    case "^":
      return raised(workings, expression, left, settled(right));
  }
}

function sum(
  workings: Workings,
  expression: BinaryExpression,
  left: Quantity,
  right: Quantity,
  hint: Dimension | undefined,
): Quantity | null {
  const total = expression.operator === "+" ? add(left, right) : subtract(left, right);
  if (total !== null) return finite(workings, total, expression);
  const subject = `Both sides of '${expression.operator}' have to be of one kind, here`;
  return leftIsToBlame(left, right, hint)
    ? blame(workings, expression.left, left, { expected: right.dimension, subject })
    : blame(workings, expression.right, right, { expected: left.dimension, subject });
}

/** Of two sides of different kinds: the one that is not as the place needs it, else the one without a unit. */
function leftIsToBlame(left: Quantity, right: Quantity, hint: Dimension | undefined): boolean {
  if (hint !== undefined && sameDimension(left.dimension, hint)) return false;
  if (hint !== undefined && sameDimension(right.dimension, hint)) return true;
  return isNumber(left.dimension);
}

function quotient(
  workings: Workings,
  expression: BinaryExpression,
  left: Quantity,
  right: Quantity,
): Quantity | null {
  if (right.value !== 0) return finite(workings, divide(left, right), expression);
  const { range } = expression.right;
  const divisor = quoted(workings.text, range) ?? "this";
  return fail(workings, failure("not-finite", range, `Division by zero: ${divisor} is 0.`));
}

function raised(
  workings: Workings,
  expression: BinaryExpression,
  base: Quantity,
  exponent: Quantity,
): Quantity | null {
  if (isNumber(exponent.dimension)) return finite(workings, power(base, exponent.value), expression);
  return blame(workings, expression.right, exponent, { expected: NUMBER, subject: "An exponent is" });
}
