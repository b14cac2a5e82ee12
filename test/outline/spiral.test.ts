import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../geometry/language/design.ts";
import type { Turning } from "../../geometry/language/tree.ts";
import type { Segment } from "../../geometry/outline/segment.ts";
import {
  distanceToSegment,
  lengthOf,
  pointAt,
  signedAreaOf,
  tangentAt,
} from "../../geometry/outline/segment-geometry.ts";
import { SPIRAL_DEVIATION_MM, spiralSegments } from "../../geometry/outline/spiral.ts";
import { distance, polar, turnBetween } from "../../geometry/outline/vector.ts";
import { expectClose } from "../support/close-to.ts";
import { expectTrueArc } from "./joins.ts";
import { outerOf } from "./study.ts";

const SOURCE = { start: 3, end: 9 };
const ORIGIN = { x: 0, y: 0 };

interface True {
  readonly r0: number;
  readonly r1: number;
  readonly start: number;
  readonly sweep: number;
  readonly turning: Turning;
}

const pointOn = ({ r0, r1, start, sweep, turning }: True, share: number): Point =>
  polar(ORIGIN, r0 + (r1 - r0) * share, start + (turning === "left" ? 1 : -1) * sweep * share);

const arcsOf = (spiral: True): Segment[] =>
  spiralSegments(pointOn(spiral, 0), pointOn(spiral, 1), spiral.turning, SOURCE);

/** Farthest distance from the true curve to the arcs, and from the arcs to the true curve, both densely sampled. */
function strays(spiral: True, segments: readonly Segment[]): { toArcs: number; toCurve: number } {
  const count = 1500;
  const curve = Array.from({ length: count + 1 }, (_, i) => pointOn(spiral, i / count));
  const toArcs = Math.max(
    ...curve.map((point) => Math.min(...segments.map((s) => distanceToSegment(s, point)))),
  );
  const toCurve = Math.max(
    ...segments.flatMap((segment) =>
      Array.from({ length: 41 }, (_, i) => strayOf(spiral, pointAt(segment, i / 40))),
    ),
  );
  return { toArcs, toCurve };
}

/** Distance from a point to the true curve: Newton-free, by halving a bracket about the point's own angle. */
function strayOf(spiral: True, point: Point): number {
  const sign = spiral.turning === "left" ? 1 : -1;
  const raw = (sign * (Math.atan2(point.y, point.x) - spiral.start)) / spiral.sweep;
  const round = (2 * Math.PI) / spiral.sweep;
  const near = [raw - round, raw, raw + round].reduce((a, b) =>
    Math.abs(b - 0.5) < Math.abs(a - 0.5) ? b : a,
  );
  let [low, high] = [Math.max(0, near - 0.2), Math.min(1, near + 0.2)];
  for (let i = 0; i < 60; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (distance(pointOn(spiral, a), point) < distance(pointOn(spiral, b), point)) high = b;
    else low = a;
  }
  return distance(pointOn(spiral, (low + high) / 2), point);
}

const randomSpiral: fc.Arbitrary<True> = fc.record({
  r0: fc.double({ min: 5, max: 300, noNaN: true }),
  r1: fc.double({ min: 5, max: 300, noNaN: true }),
  start: fc.double({ min: -3, max: 3, noNaN: true }),
  sweep: fc.double({ min: 0.05, max: 6.2, noNaN: true }),
  turning: fc.constantFrom("left" as const, "right" as const),
});

describe("a spiral in arcs", () => {
  it("stays as near to the true curve as it says, ends exactly, and has no kink", () => {
    fc.assert(
      fc.property(randomSpiral, (spiral) => {
        const segments = arcsOf(spiral);
        const { toArcs, toCurve } = strays(spiral, segments);
        expect(toArcs).toBeLessThanOrEqual(SPIRAL_DEVIATION_MM);
        expect(toCurve).toBeLessThanOrEqual(SPIRAL_DEVIATION_MM * 1.01);
        expect(segments[0]?.from).toEqual(pointOn(spiral, 0));
        expect(segments.at(-1)?.to).toEqual(pointOn(spiral, 1));
        for (const [i, segment] of segments.entries()) {
          expectTrueArc(segment);
          expect(segment.source).toBe(SOURCE);
          const next = segments[i + 1];
          if (next === undefined) continue;
          expect(next.from).toEqual(segment.to);
          expect(Math.abs(turnBetween(tangentAt(segment, 1), tangentAt(next, 0)))).toBeLessThan(1e-9);
        }
      }),
      { seed: 20240505, numRuns: 40 },
    );
  });

  it("has the direction of the true curve at its ends", () => {
    const spiral: True = { r0: 40, r1: 100, start: 0, sweep: 3, turning: "left" };
    const segments = arcsOf(spiral);
    const rise = 60 / 3;
    const first = segments[0];
    const tangent = first ? tangentAt(first, 0) : ORIGIN;
    expectClose(Math.atan2(tangent.y, tangent.x), Math.atan2(40, rise), 1e-12);
  });

  it("is one circle's arcs where the radius stays", () => {
    const segments = arcsOf({ r0: 50, r1: 50, start: 1, sweep: 5, turning: "right" });
    expect(segments.length).toBeLessThanOrEqual(2);
    for (const segment of segments)
      expect(segment).toMatchObject({ kind: "arc", radiusMm: expect.closeTo(50, 9) });
  });

  it("takes few arcs: a quarter of them would not do", () => {
    const spiral: True = { r0: 60, r1: 130, start: 0, sweep: 5.5, turning: "left" };
    const segments = arcsOf(spiral);
    expect(segments.length).toBeLessThanOrEqual(24);
    // A pair of arcs strays with the cube of its length: near the limit none can be spared by a fifth.
    expect(strays(spiral, segments).toArcs).toBeGreaterThan(SPIRAL_DEVIATION_MM / 2);
  });

  it("copes with a spiral that is all but a ray", () => {
    const spiral: True = { r0: 20, r1: 120, start: 0.3, sweep: 1e-4, turning: "left" };
    const segments = arcsOf(spiral);
    expectClose(
      segments.reduce((sum, segment) => sum + lengthOf(segment), 0),
      100,
      1e-6,
    );
  });
});

describe("an outline with a spiral", () => {
  it("has the spiral's area: (r₁³ − r₀³)·θ/6(r₁ − r₀), within the strip of its deviation", () => {
    const outer = outerOf("outline { from (40 mm, 0 mm) spiral (100 mm @ 300 deg) turning left close }");
    const sweep = (5 / 3) * Math.PI;
    const spiralArea = ((100 ** 3 - 40 ** 3) * sweep) / (6 * 60);
    const triangle = 0.5 * 40 * 100 * Math.sin(Math.PI / 3);
    const length = outer.segments.reduce((sum, segment) => sum + lengthOf(segment), 0);
    const error = Math.abs(signedAreaOf(outer) - (spiralArea + triangle));
    expect(error).toBeLessThan(length * SPIRAL_DEVIATION_MM);
  });

  it("can be rounded where it meets a line, farther than its last arc reaches", () => {
    const path = (corner: string): string =>
      `outline { from (40 mm, 0 mm) spiral (100 mm @ 300 deg) turning left ${corner} close }`;
    const sharp = outerOf(path(""));
    const last = sharp.segments.at(-2);
    const rounded = outerOf(path("round 30 mm"));
    const fillet = rounded.segments.at(-2);
    expect(fillet).toMatchObject({ kind: "arc", radiusMm: 30 });
    // One arc more for the fillet, and at least one less that it has used up.
    expect(rounded.segments.length).toBeLessThanOrEqual(sharp.segments.length);
    expect(last && lengthOf(last)).toBeLessThan(30);
    for (const [i, segment] of rounded.segments.entries()) {
      const next = rounded.segments[i + 1];
      if (next) expect(Math.abs(turnBetween(tangentAt(segment, 1), tangentAt(next, 0)))).toBeLessThan(1e-9);
    }
  });
});
