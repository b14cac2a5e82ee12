import { describe, expect, it } from "vitest";
import { functionRule } from "../../geometry/language/functions.ts";
import { FUNCTION_NAMES } from "../../geometry/language/vocabulary.ts";
import { completed, designOf } from "./marked-text.ts";

const valueGiven = (text: string) => designOf(completed(`let value = ${text}`)).lets[0]?.value;

describe("functions", () => {
  it("are those of the vocabulary", () => {
    for (const name of FUNCTION_NAMES) expect(functionRule(name)?.usage.startsWith(`${name}(`)).toBe(true);
    for (const name of ["log", "toString", "constructor", "valueGiven", ""])
      expect(functionRule(name)).toBe(null);
  });

  it.each([
    ["sqrt(9 mm * 4 mm)", 6],
    ["sin(90 deg)", 1],
    ["sin(30 deg)", 0.5],
    ["cos(180 deg)", -1],
    ["cos(90 deg)", 0],
    ["tan(45 deg)", 1],
    ["tan(180 deg)", 0],
    ["asin(1) / 1 deg", 90],
    ["acos(0) / 1 deg", 90],
    ["acos(hypot(1, 1) / sqrt(2))", 0],
    ["atan(1) / 1 deg", 45],
    ["atan2(1 mm, -1 mm) / 1 deg", 135],
    ["atan2(-1, 0) / 1 deg", -90],
    ["hypot(3 mm, 4 mm)", 5],
    ["hypot(2, 3, 6)", 7],
    ["min(3 mm, 1 in, 2 mm)", 2],
    ["max(3 mm, 1 in, 2 mm)", 25.4],
    ["abs(-3 mm)", 3],
    ["round(2.5)", 3],
    ["round(-2.5)", -2],
    ["round(12.4 mm, 5 mm)", 10],
    ["round(1 in, 1 mm)", 25],
    ["round(0.7 mm, 0.1 mm)", 0.7],
    ["floor(2.7)", 2],
    ["floor(0.3 mm, 0.1 mm)", 0.3],
    ["floor(-0.5)", -1],
    ["ceil(2.1)", 3],
    ["ceil(-0.5)", 0],
    ["pi", Math.PI],
    ["2 ^ 3 ^ 2", 512],
    ["-2 ^ 2", -4],
    ["8 ^ (1/3)", 2],
    ["2 ^ -1", 0.5],
    ["12 mm - 2 mm - 3 mm", 7],
    ["12 / 3 / 2", 2],
    ["0 * -1", 0],
  ])("%s is %d", (text, value) => {
    const found = valueGiven(text)?.value ?? Number.NaN;
    expect(found).toBeCloseTo(value, 14);
    expect(Object.is(found, -0)).toBe(false);
  });
});
