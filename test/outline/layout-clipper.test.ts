/**
 * How loops lie, against the polygon clipper on random polygons. It is asked for areas only, and knows nothing of the
 * exact meetings that the verdicts are made of.
 */
import ClipperLib from "clipper-lib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../geometry/language/design.ts";
import { isInside } from "../../geometry/outline/check/inside.ts";
import { layoutOf } from "../../geometry/outline/check/layout.ts";
import { areaOutsideMm2, sharedAreaMm2 } from "../../geometry/outline/check/region.ts";
import { gapBetween } from "../../geometry/outline/check/segment-distance.ts";
import { flatten } from "../../geometry/outline/flatten.ts";
import { intersections } from "../../geometry/outline/intersect.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { distanceToSegment, pointAt, signedAreaOf } from "../../geometry/outline/segment-geometry.ts";
import { distance } from "../../geometry/outline/vector.ts";
import { expectClose } from "../support/close-to.ts";
import { circle, outlineOf, polygon, rectangle, slot } from "../support/loops.ts";
import { soundOutline } from "../support/random-outlines.ts";
import { randomPoint, randomSegment } from "./random-segments.ts";

const UNITS = 1e5;
const whole = (points: readonly Point[]) =>
  points.map(({ x, y }) => ({ X: Math.round(x * UNITS), Y: Math.round(y * UNITS) }));

/** Whether a polygon crosses itself: the clipper then makes several loops of it, or loses area to overlaps. */
function clipperSaysSimple(points: readonly Point[]): boolean {
  const clipper = new ClipperLib.Clipper();
  clipper.AddPath(whole(points), ClipperLib.PolyType.ptSubject, true);
  const parts: { X: number; Y: number }[][] = [];
  const { pftEvenOdd } = ClipperLib.PolyFillType;
  clipper.Execute(ClipperLib.ClipType.ctUnion, parts, pftEvenOdd, pftEvenOdd);
  return parts.length === 1 && parts[0]?.length === points.length;
}

const corner = fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 }));

/** Integer corners, moved a little off the grid so that none lies on an edge of another. */
const randomPolygon = fc
  .array(fc.tuple(corner, fc.integer({ min: 1, max: 997 }), fc.integer({ min: 1, max: 991 })), {
    minLength: 3,
    maxLength: 6,
  })
  .map((corners) => corners.map(([[x, y], dx, dy]): [number, number] => [x + dx / 1013, y + dy / 1019]));

const isFarFromFlat = (loop: Loop): boolean => {
  const segments = loop.segments;
  return segments.every((segment, i) => {
    const others = segments.filter(
      (_, j) => j !== i && (j + 1) % segments.length !== i && (i + 1) % segments.length !== j,
    );
    return others.every(
      (other) => intersections(segment, other).length > 0 || gapBetween(segment, other).distanceMm > 0.01,
    );
  });
};

describe("a polygon", () => {
  it("crosses itself where the clipper says so", () => {
    let simple = 0;
    fc.assert(
      fc.property(randomPolygon, (corners) => {
        const loop = polygon(corners);
        fc.pre(isFarFromFlat(loop));
        const expected = clipperSaysSimple(flatten(loop, 1));
        const { crossed } = layoutOf({ outer: loop, inner: [] });
        expect(crossed.size === 0, JSON.stringify(corners)).toBe(expected);
        simple += expected ? 1 : 0;
      }),
      { seed: 20240509, numRuns: 1000 },
    );
    expect(simple).toBeGreaterThan(100);
  });
});

const hole = fc
  .record({ at: corner, radius: fc.integer({ min: 2, max: 25 }), square: fc.boolean() })
  .map(({ at: [x, y], radius, square }) =>
    square
      ? rectangle(x - radius, y - radius, x + radius, y + 0.5 + radius)
      : circle(radius, [x + 0.25, y + 0.125]),
  );

describe("holes", () => {
  it("lie outside, touch or do neither as the areas of the clipper say", () => {
    const seen = { outside: 0, inside: 0, touching: 0, apart: 0 };
    fc.assert(
      fc.property(hole, hole, (a, b) => {
        const outline = outlineOf(rectangle(-60.3, -40.3, 60.7, 40.7), a, b);
        const { outside, touching } = layoutOf(outline);
        for (const [i, inner] of outline.inner.entries()) {
          const isOut = [...outside].some(({ number }) => number === i + 1);
          expect(isOut).toBe(areaOutsideMm2(inner, outline.outer) > 1e-3);
          seen[isOut ? "outside" : "inside"] += 1;
        }
        const shared = sharedAreaMm2(a, b);
        // Between touching and apart by rounding, areas cannot tell.
        fc.pre(
          shared > 0.01 ||
            Math.min(...a.segments.flatMap((s) => b.segments.map((t) => gapBetween(s, t).distanceMm))) > 0.01,
        );
        expect(touching.length > 0).toBe(shared > 0.01);
        seen[touching.length > 0 ? "touching" : "apart"] += 1;
      }),
      { seed: 20240510, numRuns: 250 },
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(10);
  });

  it("of sound outlines bring no complaint", () => {
    fc.assert(
      fc.property(soundOutline, (outline) => {
        const { crossed, outside, touching } = layoutOf(outline);
        expect([crossed.size, outside.size, touching.length]).toEqual([0, 0, 0]);
      }),
      { seed: 20240511, numRuns: 150 },
    );
  });
});

describe("the region engine", () => {
  it("gives the areas of lenses and crescents", () => {
    // Two circles of radius 10, 10 apart: 2r²·cos⁻¹(d/2r) − ½d·√(4r² − d²).
    const lens = 200 * Math.acos(0.5) - 5 * Math.sqrt(300);
    expectClose(sharedAreaMm2(circle(10), circle(10, [10, 0])), lens, 1e-4);
    expectClose(areaOutsideMm2(circle(10), circle(10, [10, 0])), 100 * Math.PI - lens, 1e-4);
    expect(sharedAreaMm2(circle(10), circle(5, [30, 0]))).toBe(0);
    expectClose(areaOutsideMm2(rectangle(0, 0, 10, 10), slot([2, 5], [8, 5], 2)), 100 - 12 - Math.PI, 1e-5);
  });

  it("throws what it would otherwise alert, and what is not a number", () => {
    expect(() => ClipperLib.Error("out of range")).toThrow("out of range");
    expect(() => sharedAreaMm2(circle(10), circle(Number.NaN))).toThrow(RangeError);
  });
});

describe("the inside of a loop", () => {
  it("is where winding along a fine flattening says", () => {
    fc.assert(
      fc.property(soundOutline, randomPoint, ({ outer }, point) => {
        fc.pre(Math.min(...outer.segments.map((segment) => distanceToSegment(segment, point))) > 0.01);
        const corners = flatten(outer, 1e-3);
        let crossings = 0;
        for (const [i, b] of corners.entries()) {
          const a = corners.at(i - 1) ?? b;
          if (a.y > point.y === b.y > point.y) continue;
          if (point.x < a.x + ((b.x - a.x) * (point.y - a.y)) / (b.y - a.y)) crossings += 1;
        }
        expect(isInside(outer, point)).toBe(crossings % 2 === 1);
      }),
      { seed: 20240512, numRuns: 250 },
    );
  });

  it("knows the bulges of arcs, however long, and both ways round", () => {
    const dot = circle(10, [5, 5]);
    expect(isInside(dot, { x: 14.9, y: 5 })).toBe(true);
    expect(isInside(dot, { x: 5, y: -4.9 })).toBe(true);
    expect(isInside(dot, { x: 13, y: 13 })).toBe(false);
    expect(Math.abs(signedAreaOf(dot))).toBeGreaterThan(0);
  });
});

describe("the gap between two segments", () => {
  it("is the least that dense sampling finds", () => {
    fc.assert(
      fc.property(randomSegment, randomSegment, (a, b) => {
        fc.pre(intersections(a, b).length === 0);
        const gap = gapBetween(a, b);
        expectClose(distance(gap.from, gap.to), gap.distanceMm, 1e-9);
        expect(distanceToSegment(a, gap.from)).toBeLessThan(1e-9);
        expect(distanceToSegment(b, gap.to)).toBeLessThan(1e-9);
        const sampled = Math.min(
          ...Array.from({ length: 501 }, (_, i) => distanceToSegment(b, pointAt(a, i / 500))),
        );
        expect(gap.distanceMm).toBeLessThanOrEqual(sampled + 1e-9);
        expect(gap.distanceMm).toBeGreaterThan(sampled - 1.2);
      }),
      { seed: 20240513, numRuns: 400 },
    );
  });
});
