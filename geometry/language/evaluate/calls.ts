/** Calls of functions: the right number of values, of the right kinds, for which the function gives something. */
import { isNumber, sameDimension } from "../dimension.ts";
import { formatQuantity } from "../format-quantity.ts";
import { type FunctionRule, functionRule, type Refusal } from "../functions.ts";
import type { Problem } from "../problem.ts";
import type { Quantity } from "../quantity.ts";
import { dimensionName } from "../quantity-kinds.ts";
import type { CallExpression, Expression } from "../tree.ts";
import { failure, rewrite } from "./problems.ts";
import { blame, fail, finite, type Need, type Workings } from "./workings.ts";

/** The value of a call whose arguments have been evaluated, null for those that could not be. */
export function call(
  workings: Workings,
  expression: CallExpression,
  values: readonly (Quantity | null)[],
): Quantity | null {
  const rule = functionRule(expression.callee.name);
  // A function that is none has been reported by the parser.
  if (rule === null) return null;
  if (values.length < rule.least || values.length > rule.most) {
    return fail(workings, wrongCount(expression, rule));
  }
  const given = values.filter((worth) => worth !== null);
  if (given.length < values.length || !areFit(workings, expression, rule, given)) return null;
  const result = rule.compute(given);
  return "value" in result
    ? finite(workings, result, expression)
    : fail(workings, refused(expression, result, given));
}

function wrongCount({ callee, args, range }: CallExpression, { usage }: FunctionRule): Problem {
  const count =
    args.length === 1 ? "1 value stands" : `${args.length === 0 ? "no" : args.length} values stand`;
  return failure("bad-argument", range, `'${callee.name}' is written '${usage}'; ${count} here.`);
}

function refused(expression: CallExpression, refusal: Refusal, given: readonly Quantity[]): Problem {
  const { code, reason, argument } = refusal;
  const head = `'${expression.callee.name}': ${reason}`;
  const blamed = argument === null ? undefined : expression.args[argument];
  const worth = argument === null ? undefined : given[argument];
  if (blamed === undefined || worth === undefined) return failure(code, expression.range, `${head}.`);
  return failure(code, blamed.range, `${head}; this is ${formatQuantity(worth)}.`);
}

/** Whether the values are of the kinds that the rule takes; the first that is not is reported. */
function areFit(
  workings: Workings,
  expression: CallExpression,
  { takes }: FunctionRule,
  given: readonly Quantity[],
): boolean {
  if (takes === "any") return true;
  const name = expression.callee.name;
  if (takes === "step" && given.length === 1) return isWithoutUnit(workings, expression, given);
  if (takes === "alike" || takes === "step") {
    const model = given.find(({ dimension }) => !isNumber(dimension)) ?? given[0];
    if (model === undefined) return true;
    const subject = `'${name}' takes values of one kind, here`;
    return areOf(workings, expression.args, given, { expected: model.dimension, subject });
  }
  return areOf(workings, expression.args, given, {
    expected: takes,
    subject: `'${name}' takes`,
    strict: true,
  });
}

function areOf(
  workings: Workings,
  args: readonly Expression[],
  given: readonly Quantity[],
  need: Need,
): boolean {
  const odd = given.findIndex(({ dimension }) => !sameDimension(dimension, need.expected));
  const [argument, worth] = [args[odd], given[odd]];
  if (argument === undefined || worth === undefined) return true;
  blame(workings, argument, worth, need);
  return false;
}

/** A value with a unit is rounded to steps: what whole number 12.4 mm is next to depends on the unit. */
function isWithoutUnit(
  workings: Workings,
  { callee, args }: CallExpression,
  given: readonly Quantity[],
): boolean {
  const [argument, worth] = [args[0], given[0]];
  if (argument === undefined || worth === undefined || isNumber(worth.dimension)) return true;
  const step = `1 ${workings.usualUnit(worth.dimension)}`;
  const behind = { start: argument.range.end, end: argument.range.end };
  const message =
    `'${callee.name}' makes plain numbers whole; for ${dimensionName(worth.dimension)} say to which step, ` +
    `such as '${callee.name}(…, ${step})'.`;
  const fixes = [rewrite(`Use steps of '${step}'`, behind, `, ${step}`)];
  fail(workings, failure("wrong-unit", argument.range, message, fixes));
  return false;
}
