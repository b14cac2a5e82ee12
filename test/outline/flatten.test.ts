import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { flatten } from "../../geometry/outline/flatten.ts";
import { signedAreaOf } from "../../geometry/outline/segment-geometry.ts";
import { cross, norm } from "../../geometry/outline/vector.ts";
import { expectClose } from "../support/close-to.ts";
import { circle, rectangle } from "../support/loops.ts";
import { soundOutline } from "../support/random-outlines.ts";

const areaOf = (points: readonly { x: number; y: number }[]): number =>
  points.reduce((sum, point, i) => sum + cross(points.at(i - 1) ?? point, point), 0) / 2;

describe("a flattened loop", () => {
  it("keeps the corners of a polygon and repeats none", () => {
    expect(flatten(rectangle(0, 0, 4, 3), 0.1)).toEqual([
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 3 },
      { x: 0, y: 3 },
    ]);
  });

  it("holds its tolerance and does not waste points on it", () => {
    for (const toleranceMm of [1, 0.1, 0.01, 0.001]) {
      const points = flatten(circle(50), toleranceMm);
      const sagitta = 50 * (1 - Math.cos(Math.PI / points.length));
      expect(sagitta).toBeLessThanOrEqual(toleranceMm);
      expect(sagitta).toBeGreaterThan(0.6 * toleranceMm);
      for (const point of points) expectClose(norm(point), 50, 1e-14);
    }
  });

  it("still has an inside at the coarsest", () => {
    expect(flatten(circle(1), 100)).toHaveLength(4);
  });

  it("comes near the exact area as the tolerance shrinks", () => {
    fc.assert(
      fc.property(soundOutline, ({ outer }) => {
        const exact = signedAreaOf(outer);
        const errors = [0.1, 0.01, 0.001].map((tolerance) =>
          Math.abs(areaOf(flatten(outer, tolerance)) - exact),
        );
        const perimeter = 1500;
        for (const [i, error] of errors.entries())
          expect(error).toBeLessThanOrEqual(perimeter * 0.1 ** (i + 1));
      }),
      { seed: 20240504, numRuns: 100 },
    );
  });

  it("refuses a tolerance that is none", () => {
    for (const tolerance of [0, -1, Number.NaN])
      expect(() => flatten(circle(1), tolerance)).toThrow(RangeError);
  });
});
