import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cosSin } from "../../geometry/language/exact-angles.ts";
import { formatNumber, roundForFix } from "../../geometry/language/number-text.ts";

const SEED = 771;

describe("formatNumber", () => {
  it.each([
    [0.1 + 0.2, "0.3"],
    [130, "130"],
    [1 / 3, "0.333333"],
    [-0, "0"],
    [-2.5, "-2.5"],
    [1_234_567, "1234570"],
    [0.0000123456789, "0.0000123457"],
  ])("writes %d as %s", (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });
});

describe("roundForFix", () => {
  it.each([
    [84.2137, "up", 84.3],
    [84.2137, "down", 84.2],
    [13.97, "down", 13.9],
    [132.4, "up", 133],
    [0.12345, "up", 0.124],
    [0.3, "up", 0.3],
    [0.3, "down", 0.3],
    [0.1 + 0.2, "up", 0.301],
    [999.6, "up", 1000],
    [-13.97, "up", -13.9],
    [-13.97, "down", -14],
    [0, "up", 0],
    [12_345, "down", 12_300],
  ] as const)("%d %s is %d", (value, direction, rounded) => {
    expect(roundForFix(value, direction)).toBe(rounded);
  });

  it("stays on the safe side, near the value, and settles at once", () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -1e6, max: 1e6 }).filter((value) => Math.abs(value) > 1e-6),
        fc.constantFrom("up", "down"),
        (value, direction) => {
          const rounded = roundForFix(value, direction);
          expect(direction === "up" ? rounded >= value : rounded <= value).toBe(true);
          expect(Math.abs(rounded - value)).toBeLessThanOrEqual(0.0101 * Math.abs(value));
          expect(roundForFix(rounded, direction)).toBe(rounded);
          expect(
            String(rounded)
              .replace(/[-.]/g, "")
              .replace(/^0+|0+$/g, "").length,
          ).toBeLessThanOrEqual(3);
        },
      ),
      { seed: SEED },
    );
  });
});

describe("cosSin", () => {
  it("is exact at quarter turns", () => {
    expect(cosSin(Math.PI / 2)).toEqual({ cos: 0, sin: 1 });
    expect(cosSin(Math.PI)).toEqual({ cos: -1, sin: 0 });
    expect(cosSin(-Math.PI / 2)).toEqual({ cos: 0, sin: -1 });
    expect(cosSin(270 * (Math.PI / 180))).toEqual({ cos: 0, sin: -1 });
    expect(cosSin(0)).toEqual({ cos: 1, sin: 0 });
    for (const [turn, cos] of [1, 0, -1, 0].entries())
      expect(cosSin(((turn + 40) * Math.PI) / 2).cos).toBe(cos);
  });
  it("is the plain cosine and sine elsewhere", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -20, max: 20 }), (angle) => {
        const { cos, sin } = cosSin(angle);
        expect(Math.abs(cos - Math.cos(angle))).toBeLessThan(1e-14);
        expect(Math.abs(sin - Math.sin(angle))).toBeLessThan(1e-14);
      }),
      { seed: SEED },
    );
    expect(cosSin(Math.PI / 2 + 1e-12).cos).not.toBe(0);
  });
});
