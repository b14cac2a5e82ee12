/** What the functions and constants of expressions give, argument by argument. */
import type { FunctionName } from "../language/vocabulary.ts";

export interface FunctionHelp {
  readonly summary: string;
  readonly example: string;
  /** What each argument is, in order; a function that takes any number of them says the last one again. */
  readonly parameters: readonly { readonly name: string; readonly about: string }[];
  /** True where more arguments may follow. */
  readonly takesMore: boolean;
}

const ANGLE = { name: "angle", about: "An angle with its unit, such as 30 deg." };
const RATIO = { name: "number", about: "A plain number from -1 to 1." };
const VALUE = { name: "value", about: "A value of any kind." };

export const FUNCTION_HELP: Readonly<Record<FunctionName, FunctionHelp>> = {
  sqrt: help("The square root.", "sqrt(900 mm^2)", [VALUE]),
  sin: help("The sine of an angle.", "sin(30 deg)", [ANGLE]),
  cos: help("The cosine of an angle.", "cos(60 deg)", [ANGLE]),
  tan: help("The tangent of an angle.", "tan(45 deg)", [ANGLE]),
  asin: help("The angle whose sine this is, from -90 deg to 90 deg.", "asin(0.5)", [RATIO]),
  acos: help("The angle whose cosine this is, from 0 deg to 180 deg.", "acos(0.5)", [RATIO]),
  atan: help("The angle whose tangent this is, from -90 deg to 90 deg.", "atan(1)", [
    { name: "number", about: "A plain number." },
  ]),
  atan2: help(
    "The direction of a point, counter-clockwise from +x: mind that y comes first.",
    "atan2(30 mm, 40 mm)",
    [
      { name: "y", about: "How far up." },
      { name: "x", about: "How far to the right; of the same kind as y." },
    ],
  ),
  hypot: help(
    "The distance of a point from the origin: the root of the sum of the squares.",
    "hypot(30 mm, 40 mm)",
    [
      { name: "x", about: "How far to the right." },
      { name: "y", about: "How far up; of the same kind as x." },
    ],
    true,
  ),
  min: help(
    "The smallest of several values of one kind.",
    "min(12 mm, 0.5 in)",
    [
      { name: "a", about: "A value of any kind." },
      { name: "b", about: "Another of the same kind." },
    ],
    true,
  ),
  max: help(
    "The largest of several values of one kind.",
    "max(12 mm, 0.5 in)",
    [
      { name: "a", about: "A value of any kind." },
      { name: "b", about: "Another of the same kind." },
    ],
    true,
  ),
  abs: help("The value without its sign.", "abs(-12 mm)", [VALUE]),
  round: rounding("The nearest whole number, or the nearest whole step.", "round(12.4 mm, 1 mm)"),
  floor: rounding("The next whole number below, or the next whole step below.", "floor(12.4 mm, 1 mm)"),
  ceil: rounding("The next whole number above, or the next whole step above.", "ceil(12.4 mm, 1 mm)"),
};

export const PI_HELP = {
  summary: "The number of times that a circle's diameter goes around it: 3.14159…",
  example: "let turn_length = pi * 24 mm",
};

/** The help of a function, or null where there is no such function. */
export function functionHelp(name: string): FunctionHelp | null {
  return Object.hasOwn(FUNCTION_HELP, name) ? FUNCTION_HELP[name as FunctionName] : null;
}

function help(
  summary: string,
  example: string,
  parameters: FunctionHelp["parameters"],
  takesMore = false,
): FunctionHelp {
  return { summary, example, parameters, takesMore };
}

function rounding(summary: string, example: string): FunctionHelp {
  return help(summary, example, [
    VALUE,
    { name: "step", about: "The step, of the same kind; only a plain number needs none." },
  ]);
}
