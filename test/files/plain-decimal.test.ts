import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainDecimal } from "../../geometry/files/plain-decimal.ts";

const SEED = 20_260_101;

describe("a plain decimal", () => {
  it.each([
    [0, 12, "0"],
    [-0, 12, "0"],
    [130, 12, "130"],
    [-22.5, 12, "-22.5"],
    [0.1 + 0.2, 12, "0.3"],
    [123.456, 15, "123.456"],
    [1e-7, 12, "0.0000001"],
    [1e-13, 12, "0"],
    [-1e-13, 12, "0"],
    [1 / 3, 3, "0.333"],
    [99.9999, 2, "100"],
    [2.5, 0, "3"],
    [100, 0, "100"],
    [1e21, 3, "1000000000000000000000"],
    [-1.5e22, 3, "-15000000000000000000000"],
    [Number.MIN_VALUE, 12, "0"],
  ])("of %d with %i digits at most is %s", (value, digits, text) => {
    expect(plainDecimal(value, digits)).toBe(text);
  });

  it("reads back within half of its last digit, or as the number itself", () => {
    const value = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 });
    fc.assert(
      fc.property(value, fc.integer({ min: 9, max: 15 }), (number, digits) => {
        const back = Number(plainDecimal(number, digits));
        expect(Math.abs(back - number)).toBeLessThanOrEqual(
          0.5 * 10 ** -digits * (1 + 1e-6) + 1e-16 * Math.abs(number),
        );
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it("is digits with a point at most, for every finite number", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
        const text = plainDecimal(number, 12);
        expect(text).toMatch(/^-?(0|[1-9]\d*)(\.\d{0,11}[1-9])?$/);
        expect(text).not.toBe("-0");
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it("is no longer than the number needs", () => {
    const short = fc.integer({ min: -1e9, max: 1e9 }).map((thousandths) => thousandths / 1000);
    fc.assert(
      fc.property(short, (number) => {
        expect(plainDecimal(number, 15)).toBe(String(number));
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses %d", (value) => {
    expect(() => plainDecimal(value, 3)).toThrow(RangeError);
  });
});
