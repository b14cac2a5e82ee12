import fc from "fast-check";
import { describe, it } from "vitest";
import { measureCurve } from "../../geometry/files/verify/measure-curve.ts";
import { figuresOf } from "../readers/curve-figures.ts";
import { expectClose } from "../support/close-to.ts";

const SEED = 20_260_105;

const polyline = (...vertices: [x: number, y: number, bulge: number][]) => ({
  kind: "polyline" as const,
  layer: "CUT_OUTER",
  closed: true,
  statedCount: null,
  vertices: vertices.map(([x, y, bulge]) => ({ x, y, bulge })),
});

describe("a curve of a cut file", () => {
  it("that is a lens keeps its digits, however thin or round", () => {
    const exponent = fc.double({ min: -12, max: 0.7, noNaN: true });
    fc.assert(
      fc.property(exponent, fc.boolean(), (power, turned) => {
        const bulge = (turned ? -1 : 1) * 10 ** power;
        const curve = polyline([5, 0, bulge], [55, 0, bulge]);
        const { area, centroid } = measureCurve(curve);
        expectClose(area, figuresOf([curve], []).area, 1e-11);
        // On the x axis, where the lens itself keeps its digits. The first moments have those of the chord.
        const slack = 1e-14 / Math.min(1, Math.abs(bulge));
        expectClose(centroid.x, 30, slack, 50 * (1 + bulge ** 2));
        expectClose(centroid.y, 0, slack, 50 * (1 + bulge ** 2));
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("has the area, centroid and extents that quadrature finds", () => {
    const bulge = fc.oneof(
      fc.constant(0),
      fc.double({ min: 1e-6, max: 3, noNaN: true }),
      fc.double({ min: -3, max: -1e-6, noNaN: true }),
    );
    const place = fc.double({ min: 10, max: 100, noNaN: true });
    const corners = fc.array(fc.tuple(place, bulge), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(corners, (list) => {
        const curve = polyline(
          ...list.map(([radius, b], k): [number, number, number] => {
            const angle = (2 * Math.PI * k) / list.length;
            return [7 + radius * Math.cos(angle), radius * Math.sin(angle) - 3, b];
          }),
        );
        const found = measureCurve(curve);
        const figures = figuresOf([curve], []);
        const { minX, minY, maxX, maxY } = found.bounds;
        const size = Math.hypot(maxX - minX, maxY - minY);
        expectClose(found.area, Math.abs(figures.area), 1e-12, size ** 2);
        expectClose(found.centroid.x * found.area, figures.centroid[0] * found.area, 1e-12, size ** 3);
        expectClose(found.centroid.y * found.area, figures.centroid[1] * found.area, 1e-12, size ** 3);
        for (const [i, bound] of [minX, minY, maxX, maxY].entries())
          expectClose(bound, figures.bounds[i] ?? NaN, 1e-12, size);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("is as long as its pieces: a stadium, and a circle", () => {
    expectClose(
      measureCurve(polyline([0, 0, 0], [10, 0, 1], [10, 4, 0], [0, 4, 1])).length,
      20 + 4 * Math.PI,
      1e-14,
    );
    expectClose(
      measureCurve({ kind: "circle", layer: "", centre: { x: 1, y: 2 }, radius: 3 }).length,
      6 * Math.PI,
      1e-14,
    );
  });
});
