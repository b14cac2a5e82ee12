import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gridOf, type Residual, solveZero, type Unknowns } from "../../geometry/study/solve-zero.ts";

const unit = fc.double({ min: 0, max: 1, noNaN: true });

describe("solveZero", () => {
  it("finds where two curves cross: the circle and the hyperbola, by hand", () => {
    // x² + y² = 1 and xy = 0.48 meet at (0.8, 0.6) and (0.6, 0.8).
    const measure = ([x = 0, y = 0]: Unknowns): Residual => [x * x + y * y - 1, x * y - 0.48];
    const found = solveZero(measure, [0.9, 0.3], 1e-12);
    expect(found?.at[0]).toBeCloseTo(0.8, 9);
    expect(found?.at[1]).toBeCloseTo(0.6, 9);
    expect(found?.size).toBeLessThanOrEqual(1e-12);
  });

  it("solves any two straight conditions in a few steps", () => {
    let calls = 0;
    fc.assert(
      fc.property(
        unit,
        unit,
        unit,
        unit,
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (u, v, x, y, slope) => {
          calls = 0;
          const measure = ([a = 0, b = 0]: Unknowns): Residual => {
            calls += 1;
            return [slope * (a - x) + 0.05 * (b - y), 0.5 * (b - y)];
          };
          const found = solveZero(measure, [u, v], 1e-10);
          expect(found?.size).toBeLessThan(1e-10);
          expect(calls).toBeLessThan(25);
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  it("comes as near as one unknown allows: the foot of the perpendicular", () => {
    // The point (3t, 4t) nearest to (1, 0.5) is at t = (3·1 + 4·0.5)/25 = 0.2, and (0.6, 0.8) is 0.5 away from it.
    const found = solveZero(([t = 0]) => [3 * t - 1, 4 * t - 0.5], [0.9], 1e-12);
    expect(found?.at[0]).toBeCloseTo(0.2, 9);
    expect(found?.size).toBeCloseTo(0.5, 12);
  });

  it("stays within the bounds and comes to the nearest place on them", () => {
    // Nearest to (1.5, 0.4) within the square: (1, 0.4).
    const found = solveZero(([x = 0, y = 0]) => [x - 1.5, y - 0.4], [0.2, 0.9], 1e-12);
    expect(found?.at[0]).toBe(1);
    expect(found?.at[1]).toBeCloseTo(0.4, 9);
    expect(found?.size).toBeCloseTo(0.5, 12);
  });

  it("never asks for a place outside the bounds", () => {
    const asked: Unknowns[] = [];
    solveZero(
      (at) => {
        asked.push(at);
        return [3 * (at[0] ?? 0) - 7, Math.sin(9 * (at[1] ?? 0)) - 2];
      },
      [1, 0],
      1e-12,
    );
    expect(asked.length).toBeGreaterThan(3);
    for (const value of asked.flat()) {
      expect(value).toBeGreaterThanOrEqual(0);
      expect(value).toBeLessThanOrEqual(1);
    }
  });

  it("steps back from where nothing can be measured", () => {
    // A full step from 0.1 overshoots into the hole in the middle; the zero is at 0.45.
    const measure = ([x = 0]: Unknowns): Residual | null =>
      x > 0.46 ? null : [Math.atan(8 * (x - 0.45)), 0];
    expect(solveZero(measure, [0.1], 1e-9)?.at[0]).toBeCloseTo(0.45, 8);
  });

  it("says nothing of a start that cannot be measured, and stays where no unknown matters", () => {
    expect(solveZero(() => null, [0.5], 1e-9)).toBeNull();
    expect(solveZero(() => [2, 1], [0.5, 0.25], 1e-9)?.at).toEqual([0.5, 0.25]);
  });
});

describe("gridOf", () => {
  it("covers the bounds evenly, from the middle of each share", () => {
    expect(gridOf(1, 2)).toEqual([[0.25], [0.75]]);
    expect(gridOf(2, 2)).toEqual([
      [0.25, 0.25],
      [0.25, 0.75],
      [0.75, 0.25],
      [0.75, 0.75],
    ]);
  });
});
