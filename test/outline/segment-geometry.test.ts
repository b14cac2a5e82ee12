import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Segment } from "../../geometry/outline/segment.ts";
import {
  boundsOf,
  distanceToSegment,
  farthestFromAxis,
  lengthOf,
  nearestOn,
  normalAt,
  perimeterOf,
  pointAt,
  signedAreaOf,
  tangentAt,
} from "../../geometry/outline/segment-geometry.ts";
import { cross, distance, dot, norm } from "../../geometry/outline/vector.ts";
import { expectClose } from "../support/close-to.ts";
import { arc, circle, circularSegment, line, rectangle, sector, slot } from "../support/loops.ts";
import { randomPoint, randomSegment } from "./random-segments.ts";

const SEED = { seed: 20240501, numRuns: 300 };
const share = fc.double({ min: 0, max: 1, noNaN: true });
const samples = (segment: Segment) => Array.from({ length: 401 }, (_, i) => pointAt(segment, i / 400));

describe("a segment", () => {
  it("has its length: 3-4-5 for a line, radius times sweep for an arc", () => {
    expect(lengthOf(line([1, 1], [4, 5]))).toBe(5);
    expectClose(lengthOf(arc([3, 4], 10, 1, -Math.PI / 2)), 5 * Math.PI, 1e-15);
  });

  it("is at its ends exactly", () => {
    fc.assert(
      fc.property(randomSegment, (segment) => {
        expect(pointAt(segment, 0)).toBe(segment.from);
        expect(pointAt(segment, 1)).toBe(segment.to);
      }),
      SEED,
    );
  });

  it("moves along its tangent, left of which is its normal", () => {
    fc.assert(
      fc.property(randomSegment, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (segment, at) => {
        const step = 1e-6;
        const ahead = pointAt(segment, at + step);
        const behind = pointAt(segment, at - step);
        const tangent = tangentAt(segment, at);
        const moved = { x: ahead.x - behind.x, y: ahead.y - behind.y };
        expectClose(dot(tangent, moved), 2 * step * lengthOf(segment), 1e-4);
        expectClose(norm(tangent), 1, 1e-12);
        expectClose(cross(tangent, normalAt(segment, at)), 1, 1e-12);
      }),
      SEED,
    );
  });

  it("is nearest where dense sampling finds it nearest", () => {
    fc.assert(
      fc.property(randomSegment, randomPoint, (segment, point) => {
        const sampled = Math.min(...samples(segment).map((sample) => distance(sample, point)));
        const exact = distanceToSegment(segment, point);
        expect(exact).toBeLessThanOrEqual(sampled + 1e-9);
        expect(exact).toBeGreaterThanOrEqual(sampled - lengthOf(segment) / 400);
        const nearest = nearestOn(segment, point);
        expect(distance(nearest.point, pointAt(segment, nearest.fraction))).toBeLessThan(1e-9);
      }),
      SEED,
    );
  });

  it("takes the start of an arc as nearest to the arc's centre", () => {
    expect(nearestOn(arc([5, 5], 3, 1, 2), { x: 5, y: 5 }).fraction).toBe(0);
  });

  it("has a box that holds it and touches it on all four sides", () => {
    fc.assert(
      fc.property(randomSegment, (segment) => {
        const box = boundsOf(segment);
        const points = samples(segment);
        const slack = lengthOf(segment) / 400;
        for (const axis of ["x", "y"] as const) {
          const [low, high] = axis === "x" ? [box.minX, box.maxX] : [box.minY, box.maxY];
          const values = points.map((point) => point[axis]);
          expect(Math.min(...values)).toBeGreaterThanOrEqual(low - 1e-9);
          expect(Math.max(...values)).toBeLessThanOrEqual(high + 1e-9);
          expect(Math.min(...values)).toBeLessThanOrEqual(low + slack);
          expect(Math.max(...values)).toBeGreaterThanOrEqual(high - slack);
        }
      }),
      SEED,
    );
  });

  it("has the exact box of a circle, whatever its start", () => {
    const box = boundsOf(arc([10, -20], 5, 0.3, -2 * Math.PI));
    expect(box).toEqual({ minX: 5, minY: -25, maxX: 15, maxY: -15 });
  });

  it("is farthest from the axis where dense sampling finds it farthest", () => {
    fc.assert(
      fc.property(randomSegment, (segment) => {
        const radii = samples(segment).map(norm);
        const slack = lengthOf(segment) / 400;
        const far = farthestFromAxis(segment).distanceMm;
        expect(far).toBeGreaterThanOrEqual(Math.max(...radii) - 1e-9);
        expect(far).toBeLessThanOrEqual(Math.max(...radii) + slack);
      }),
      SEED,
    );
  });

  it("is farthest beyond its centre, and at its start when it turns about the axis", () => {
    const beyond = farthestFromAxis(arc([30, 40], 10, 0, 2 * Math.PI));
    expectClose(beyond.distanceMm, 60, 1e-15);
    expectClose(beyond.point.x, 36, 1e-14);
    expect(farthestFromAxis(arc([0, 0], 10, 0.5, 1)).fraction).toBe(0);
  });
});

describe("the area inside a loop", () => {
  it("is known in closed form", () => {
    expect(signedAreaOf(rectangle(-3, -2, 7, 4))).toBe(60);
    expectClose(signedAreaOf(circle(30, [100, 50])), 900 * Math.PI, 1e-14);
    expectClose(signedAreaOf(sector(50, 2)), 2500, 1e-14);
    expectClose(signedAreaOf(circularSegment(50, 2)), 1250 * (2 - Math.sin(2)), 1e-14);
    expectClose(signedAreaOf(slot([10, 20], [40, 60], 8)), 50 * 8 + 16 * Math.PI, 1e-14);
  });

  it("is kept to the last digits far from the axis", () => {
    expectClose(signedAreaOf(circle(1, [1e6, 1e6])), Math.PI, 1e-9);
  });
});

describe("the length around a loop", () => {
  it("is known in closed form", () => {
    expect(perimeterOf(rectangle(0, 0, 3, 4))).toBe(14);
    expectClose(perimeterOf(slot([0, 0], [50, 0], 8)), 100 + 8 * Math.PI, 1e-14);
  });
});

describe("fractions", () => {
  it("run evenly along a segment", () => {
    fc.assert(
      fc.property(randomSegment, share, (segment, at) => {
        const chord = distance(segment.from, pointAt(segment, at));
        const along = lengthOf(segment) * at;
        const expected =
          segment.kind === "line"
            ? along
            : 2 * segment.radiusMm * Math.abs(Math.sin(along / segment.radiusMm / 2));
        expect(Math.abs(chord - expected)).toBeLessThan(1e-9);
      }),
      SEED,
    );
  });
});
