/** The functions of the language: what they take, and what they give or why they cannot. */
import { ANGLE, NUMBER } from "./dimension.ts";
import { cosSin } from "./exact-angles.ts";
import { roundToDigits } from "./number-text.ts";
import type { ProblemCode } from "./problem-codes.ts";
import type { Dimension, Quantity } from "./quantity.ts";
import { quantity, squareRoot } from "./quantity-arithmetic.ts";
import type { FunctionName } from "./vocabulary.ts";

/** Why a function gives nothing. `argument` counts from 0; null blames the call as a whole. */
export interface Refusal {
  readonly code: ProblemCode;
  readonly reason: string;
  readonly argument: number | null;
}

/**
 * `takes`: one kind for every argument; "alike" for any kind, the same for all; "any" for anything; "step" for a plain
 * number alone, or any kind with a step of that kind.
 */
export interface FunctionRule {
  /** How a call is written, for messages. */
  readonly usage: string;
  readonly least: number;
  readonly most: number;
  readonly takes: Dimension | "alike" | "any" | "step";
  /** Called with as many arguments as the rule says, of the kinds it says. */
  compute(args: readonly Quantity[]): Quantity | Refusal;
}

/**
 * `asin` and `acos` forgive an excess over 1 of this much and no more: x / hypot(x, y) may come out an ulp or a few
 * over 1, and nothing drawn is that fine.
 */
const RATIO_TOLERANCE = 1e-12;

/** Digits of a quotient before it is made whole: 0.3 mm holds three steps of 0.1 mm, not 2.9999999999999996. */
const STEP_DIGITS = 12;

const MANY = 1000;

const RULES: Readonly<Record<FunctionName, FunctionRule>> = {
  sqrt: {
    usage: "sqrt(value)",
    least: 1,
    most: 1,
    takes: "any",
    compute: ([a]) =>
      given(a).value < 0 ? refuse("a negative value has no square root") : squareRoot(given(a)),
  },
  sin: { ...one("sin(angle)", ANGLE), compute: ([a]) => quantity(cosSin(given(a).value).sin) },
  cos: { ...one("cos(angle)", ANGLE), compute: ([a]) => quantity(cosSin(given(a).value).cos) },
  tan: { ...one("tan(angle)", ANGLE), compute: ([a]) => tangent(given(a).value) },
  asin: { ...one("asin(number)", NUMBER), compute: ([a]) => inverse(given(a).value, Math.asin) },
  acos: { ...one("acos(number)", NUMBER), compute: ([a]) => inverse(given(a).value, Math.acos) },
  atan: { ...one("atan(number)", NUMBER), compute: ([a]) => quantity(Math.atan(given(a).value), ANGLE) },
  atan2: {
    usage: "atan2(y, x)",
    least: 2,
    most: 2,
    takes: "alike",
    compute: ([y, x]) => direction(given(y).value, given(x).value),
  },
  hypot: { ...several("hypot(x, y)"), compute: (args) => alike(args, Math.hypot) },
  min: { ...several("min(a, b)"), compute: (args) => alike(args, Math.min) },
  max: { ...several("max(a, b)"), compute: (args) => alike(args, Math.max) },
  abs: { usage: "abs(value)", least: 1, most: 1, takes: "any", compute: (args) => alike(args, Math.abs) },
  round: rounding("round", Math.round),
  floor: rounding("floor", Math.floor),
  ceil: rounding("ceil", Math.ceil),
};

/** The rule of a function, or null where there is no such function. */
export function functionRule(name: string): FunctionRule | null {
  return Object.hasOwn(RULES, name) ? RULES[name as FunctionName] : null;
}

function one(usage: string, takes: Dimension): Omit<FunctionRule, "compute"> {
  return { usage, least: 1, most: 1, takes };
}

function several(usage: string): Omit<FunctionRule, "compute"> {
  return { usage, least: 2, most: MANY, takes: "alike" };
}

/** `round(x)` for plain numbers, `round(x, step)` to whole steps: what 12.4 mm rounds to depends on the unit. */
function rounding(name: string, toWhole: (value: number) => number): FunctionRule {
  return {
    usage: `${name}(value, step)`,
    least: 1,
    most: 2,
    takes: "step",
    compute: ([value, step]) => roundToStep(given(value), step ?? quantity(1), toWhole),
  };
}

function roundToStep(
  { value, dimension }: Quantity,
  step: Quantity,
  toWhole: (value: number) => number,
): Quantity | Refusal {
  if (!(step.value > 0)) return refuse("the step has to be more than zero", 1);
  const steps = toWhole(roundToDigits(value / step.value, STEP_DIGITS));
  return quantity(roundToDigits(steps * step.value, 15) + 0, dimension);
}

function tangent(angleRad: number): Quantity | Refusal {
  const { cos, sin } = cosSin(angleRad);
  if (cos !== 0) return quantity(sin / cos);
  return { code: "not-finite", reason: "a quarter turn has no tangent", argument: 0 };
}

function inverse(ratio: number, compute: (ratio: number) => number): Quantity | Refusal {
  if (Math.abs(ratio) > 1 + RATIO_TOLERANCE) return refuse("it takes a number from -1 to 1");
  return quantity(compute(Math.min(1, Math.max(-1, ratio))), ANGLE);
}

function direction(y: number, x: number): Quantity | Refusal {
  if (x === 0 && y === 0) return refuse("two zeros have no direction", null);
  return quantity(Math.atan2(y, x), ANGLE);
}

function alike(args: readonly Quantity[], compute: (...values: number[]) => number): Quantity {
  return quantity(compute(...args.map(({ value }) => value)), args[0]?.dimension ?? NUMBER);
}

function refuse(reason: string, argument: number | null = 0): Refusal {
  return { code: "bad-argument", reason, argument };
}

/** The number of arguments has been checked against the rule. */
function given(argument: Quantity | undefined): Quantity {
  if (argument === undefined)
    throw new Error("a function was called with fewer arguments than its rule says");
  return argument;
}
