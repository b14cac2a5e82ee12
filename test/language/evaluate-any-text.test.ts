/** Whatever a text says, it is evaluated to the end: finite numbers, problems in the text, the same each time. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate, variantNames } from "../../geometry/language/evaluate.ts";
import { parse } from "../../geometry/language/parse.ts";
import {
  FUNCTION_NAMES,
  OPTION_WORDS,
  STATEMENT_WORDS,
  STEP_WORDS,
  UNIT_NAMES,
} from "../../geometry/language/vocabulary.ts";
import { FIGURES } from "./marked-text.ts";

const SEED = 90_210;

const words = fc.constantFrom(
  ...STATEMENT_WORDS,
  ...STEP_WORDS,
  ...OPTION_WORDS,
  ...FUNCTION_NAMES,
  ...UNIT_NAMES,
  ..."reach tail waist pi mass balance bite wear_steel_450 G40".split(" "),
);
const numbers = fc.constantFrom("0", "1", "-3", "12", "0.5", "1e308", "1e-300", "4200");
const signs = fc.constantFrom(...'( ) { } , @ = + - * / ^ <= >= \n \n \n # "x"'.split(" "), "\n");
const soup = fc
  .array(
    fc.oneof(
      { weight: 4, arbitrary: words },
      { weight: 4, arbitrary: numbers },
      { weight: 3, arbitrary: signs },
    ),
    {
      maxLength: 80,
    },
  )
  .map((tokens) => tokens.join(" "));

/** Expressions that parse, over lets of all kinds, so that evaluation is reached. */
const { expression } = fc.letrec<{ expression: string }>((tie) => ({
  expression: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    fc.constantFrom(
      "1",
      "0",
      "2.5",
      "12 mm",
      "3 in",
      "45 deg",
      "4200 rpm",
      "2 kg",
      "pi",
      "a",
      "b",
      "c",
      "d",
      "1e300",
      "3 m/s",
    ),
    fc
      .tuple(tie("expression"), fc.constantFrom("+", "-", "*", "/", "^"), tie("expression"))
      .map(([left, operator, right]) => `${left} ${operator} ${right}`),
    tie("expression").map((inner) => `(${inner})`),
    tie("expression").map((inner) => `(${inner}) mm`),
    tie("expression").map((inner) => `-${inner}`),
    fc
      .tuple(fc.constantFrom(...FUNCTION_NAMES), tie("expression"), tie("expression"))
      .map(([name, first, second]) => `${name}(${first}, ${second})`),
    fc
      .tuple(fc.constantFrom(...FUNCTION_NAMES), tie("expression"))
      .map(([name, inner]) => `${name}(${inner})`),
  ),
}));
const file = fc.array(expression, { minLength: 8, maxLength: 8 }).map(
  ([a, b, c, d, e, f, g, h]) => `thickness ${a}
let a = ${b}
let b = ${c}
let c = 5 mm from ${d} to ${e}
let d = ${e}
outline repeat ${f} { from (${a}, ${g}) line by (${b}, ${c}) arc (${d} @ ${e}) radius ${f} turning left round ${g} close }
bore ${g}
hole ring ${h} at radius ${a} diameter ${b} from ${c}
slot (${d}, ${e}) to by (${f}, ${g}) width ${h}
spin ${a} ccw
approach ${b} to ${c}
target round ${d} offset ${e}
require mass <= ${f}
require bite at ${g} >= ${h}
variant "v" { a = ${h} thickness ${b} material pla density ${c} }
`,
);

/** Everything in a design that is a number. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

function checkText(text: string): void {
  const { tree } = parse(text);
  for (const variant of [null, ...variantNames(tree), "none"]) {
    const { design, problems } = evaluate(tree, { variant, figures: FIGURES });
    expect(numbersIn(design).every(Number.isFinite)).toBe(true);
    for (const { range, message, fixes } of problems) {
      expect(range.start >= 0 && range.start <= range.end && range.end <= text.length, message).toBe(true);
      for (const { edits } of fixes) {
        for (const [index, edit] of edits.entries()) {
          const before = edits[index - 1]?.end ?? 0;
          expect(edit.start >= before && edit.start <= edit.end && edit.end <= text.length, message).toBe(
            true,
          );
        }
      }
    }
    expect(evaluate(tree, { variant, figures: FIGURES }).problems).toEqual(problems);
  }
}

describe("evaluation goes to the end of", () => {
  it("any mixture of the words of the language", () => {
    fc.assert(fc.property(soup, checkText), { seed: SEED, numRuns: 300 });
  });
  it("any values in all places that take one", () => {
    fc.assert(fc.property(file, checkText), { seed: SEED, numRuns: 200 });
  });
  it("empty and odd files", () => {
    for (const text of [
      "",
      "\n",
      "bar",
      "outline",
      "outline {",
      'variant "v" {',
      "let",
      "let a",
      "require",
      "require mass at",
    ]) {
      checkText(text);
    }
  });
});
