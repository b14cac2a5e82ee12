/** The value of expressions: every mistake told once and at the smallest place to blame. */
import { isNumber, NUMBER, sameDimension } from "../dimension.ts";
import { formatQuantity } from "../format-quantity.ts";
import { functionRule } from "../functions.ts";
import { nearestWord } from "../nearest-word.ts";
import type { Problem } from "../problem.ts";
import type { Dimension, Quantity } from "../quantity.ts";
import { negate, quantity, settled } from "../quantity-arithmetic.ts";
import { dimensionName } from "../quantity-kinds.ts";
import type {
  BinaryExpression,
  CallExpression,
  Expression,
  GroupExpression,
  NameReference,
  NumberLiteral,
  UnitExpression,
} from "../tree.ts";
import { quantityFromUnit, unitFactor } from "../units.ts";
import { call } from "./calls.ts";
import { isConstant, unitWithGap } from "./expression-shape.ts";
import { combine, isSum } from "./operators.ts";
import { didYouMean, failure, fix } from "./problems.ts";
import { blame, fail, finite, type Workings } from "./workings.ts";

export interface Expressions {
  /** The value, or null where a problem was reported. `hint` is the kind that the place is likely to need. */
  value(expression: Expression, hint?: Dimension): Quantity | null;
  /** The value if it is of the kind that is needed; `subject` begins the message: "The thickness is". */
  expect(expression: Expression | null, needed: Dimension, subject: string): Quantity | null;
}

/** An evaluator of the expressions of a file. */
export function createExpressions(workings: Workings): Expressions {
  const value = (expression: Expression, hint?: Dimension) => evaluated(workings, expression, hint);
  return {
    value,
    expect: (expression, expected, subject) => {
      const got = expression === null ? null : value(expression, expected);
      if (expression === null || got === null || sameDimension(got.dimension, expected)) return got;
      return blame(workings, expression, got, { expected, subject });
    },
  };
}

function evaluated(workings: Workings, expression: Expression, hint: Dimension | undefined): Quantity | null {
  const worth = product(workings, expression, hint);
  return worth === null ? null : settled(worth);
}

/** The value as it comes out of a product: radians kept, so that angle · length / length is an angle. */
function product(workings: Workings, expression: Expression, hint: Dimension | undefined): Quantity | null {
  switch (expression.kind) {
    case "number":
      return literal(workings, expression);
    case "name":
      return reference(workings, expression);
    case "unary": {
      const operand = product(workings, expression.operand, hint);
      return operand === null || expression.operator === "+" ? operand : negate(operand);
    }
    case "binary":
      return chain(workings, expression, hint);
    case "call":
      return call(workings, expression, argumentValues(workings, expression));
    case "group": {
      const inner = evaluated(workings, expression.inner, expression.unit === null ? hint : NUMBER);
      return inner === null || expression.unit === null
        ? inner
        : withUnit(workings, expression, inner, expression.unit);
    }
  }
}

function literal(workings: Workings, expression: NumberLiteral): Quantity | null {
  if (expression.unit === null) return finite(workings, quantity(expression.value), expression);
  const unit = unitFactor(expression.unit);
  // A unit that is none has been reported by the parser.
  return unit === null ? null : finite(workings, quantityFromUnit(expression.value, unit), expression);
}

function reference(workings: Workings, expression: NameReference): Quantity | null {
  if (isConstant(expression.name)) return quantity(Math.PI);
  const worth = workings.lookUp(expression.name);
  return worth === undefined ? fail(workings, undefinedName(expression, workings.names)) : worth;
}

function undefinedName({ name, range }: NameReference, names: readonly string[]): Problem {
  const { hint, fixes } = didYouMean(range, nearestWord(name, names));
  return failure("undefined-name", range, `No let defines '${name}'${hint}`, fixes);
}

/** `(1/4) in`: the parentheses hold a plain number, the unit applies to all of it. */
function withUnit(
  workings: Workings,
  expression: GroupExpression,
  inner: Quantity,
  unit: UnitExpression,
): Quantity | null {
  const scale = unitFactor(unit);
  if (scale === null) return null;
  if (isNumber(inner.dimension)) return finite(workings, quantityFromUnit(inner.value, scale), expression);
  const message =
    `What stands in the parentheses is ${dimensionName(inner.dimension)} already (${formatQuantity(inner)}); ` +
    `'${unit.text}' would be a second unit.`;
  const leaveOut = fix(`Remove '${unit.text}'`, [{ ...unitWithGap(workings.text, unit), newText: "" }]);
  return fail(workings, failure("wrong-unit", unit.range, message, [leaveOut]));
}

/**
 * `a + b - c …`: a chain leans to the left as deep as it is long, so it is followed down and worked back up in loops;
 * ten thousand terms need no deeper stack than one.
 */
function chain(workings: Workings, top: BinaryExpression, hint: Dimension | undefined): Quantity | null {
  const links: { readonly link: BinaryExpression; readonly hint: Dimension | undefined }[] = [];
  let first: Expression = top;
  let hintHere = hint;
  while (first.kind === "binary") {
    links.push({ link: first, hint: hintHere });
    if (!isSum(first)) hintHere = undefined;
    first = first.left;
  }
  let left = product(workings, first, hintHere);
  for (const { link, hint: linkHint } of links.reverse()) {
    const rightHint = isSum(link) ? (linkHint ?? left?.dimension) : undefined;
    const right = product(workings, link.right, rightHint);
    left = left === null || right === null ? null : combine(workings, link, left, right, linkHint);
  }
  return left;
}

function argumentValues(workings: Workings, { callee, args }: CallExpression): readonly (Quantity | null)[] {
  const takes = functionRule(callee.name)?.takes;
  const hint = typeof takes === "object" ? takes : undefined;
  return args.map((argument) => evaluated(workings, argument, hint));
}
