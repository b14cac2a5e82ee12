import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse } from "../../../geometry/analysis/analyse.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import { sectionOf } from "../../../geometry/figures/section.ts";
import type { Point } from "../../../geometry/language/design.ts";
import { circle } from "../../../geometry/outline/arc.ts";
import { offsetOutwards } from "../../../geometry/outline/offset/offset.ts";
import type { ArcSegment, Loop, Outline, Segment } from "../../../geometry/outline/segment.ts";
import { lengthOf, pointAt } from "../../../geometry/outline/segment-geometry.ts";
import { polar } from "../../../geometry/outline/vector.ts";
import { momentOfEdge, reachOfEdge } from "../../../geometry/study/tolerance/edge-moments.ts";
import { edgesOf, widthOf } from "../../../geometry/study/tolerance/edges.ts";
import { expectClose } from "../../support/close-to.ts";

const NOWHERE = { start: 0, end: 0 };

function outlineOf(name: string): Outline {
  const text = readFileSync(join(import.meta.dirname, `../../../samples/${name}.bar`), "utf8");
  const { outline } = analyse(readSource(text));
  if (!outline) throw new Error(name);
  return outline;
}

/** Midpoint sums along the segment. */
function summed(segment: Segment, value: (point: Point) => number, pieces = 20_000): number {
  let sum = 0;
  for (let i = 0; i < pieces; i++) sum += value(pointAt(segment, (i + 0.5) / pieces));
  return (sum * lengthOf(segment)) / pieces;
}

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const segment: fc.Arbitrary<Segment> = fc.oneof(
  fc.record({ x0: coordinate, y0: coordinate, x1: coordinate, y1: coordinate }).map(
    ({ x0, y0, x1, y1 }): Segment => ({
      kind: "line",
      from: { x: x0, y: y0 },
      to: { x: x1, y: y1 },
      source: NOWHERE,
    }),
  ),
  fc
    .record({
      x: coordinate,
      y: coordinate,
      radiusMm: fc.double({ min: 0.5, max: 80, noNaN: true }),
      startRad: fc.double({ min: -4, max: 4, noNaN: true }),
      sweepRad: fc.oneof(
        fc.double({ min: 0.01, max: 6.28, noNaN: true }),
        fc.double({ min: -6.28, max: -0.01, noNaN: true }),
      ),
    })
    .map(({ x, y, radiusMm, startRad, sweepRad }): ArcSegment => {
      const centre = { x, y };
      const [from, to] = [startRad, startRad + sweepRad].map((angle) => polar(centre, radiusMm, angle));
      return {
        kind: "arc",
        from: from ?? centre,
        to: to ?? centre,
        centre,
        radiusMm,
        startRad,
        sweepRad,
        source: NOWHERE,
      };
    }),
);

describe("what an edge weighs", () => {
  it("is its length times its middle on a line, nothing round a circle about the axis", () => {
    const line: Segment = { kind: "line", from: { x: 100, y: -20 }, to: { x: 100, y: 20 }, source: NOWHERE };
    expect(momentOfEdge(line)).toEqual({ x: 4000, y: 0 });
    const round = momentOfEdge(circle({ x: 0, y: 0 }, 50, NOWHERE));
    expect(Math.hypot(round.x, round.y)).toBeLessThan(1e-9);
    // Handbook: the centroid of a semicircular arc lies 2r/π from the centre, its length is πr.
    const half: ArcSegment = {
      kind: "arc",
      from: { x: 30, y: 0 },
      to: { x: -30, y: 0 },
      centre: { x: 0, y: 0 },
      radiusMm: 30,
      startRad: 0,
      sweepRad: Math.PI,
      source: NOWHERE,
    };
    expectClose(momentOfEdge(half).y, Math.PI * 30 * ((2 * 30) / Math.PI), 1e-12);
  });

  it("agrees with sums along it, on all of it and on one side of the axis", () => {
    fc.assert(
      fc.property(segment, fc.double({ min: 0, max: 6.283, noNaN: true }), (piece, angle) => {
        const towards = { x: Math.cos(angle), y: Math.sin(angle) };
        const scale = lengthOf(piece) * 200 + 1;
        const moment = momentOfEdge(piece);
        expectClose(
          moment.x,
          summed(piece, ({ x }) => x),
          1e-6,
          scale,
        );
        expectClose(
          moment.y,
          summed(piece, ({ y }) => y),
          1e-6,
          scale,
        );
        const above = summed(piece, ({ x, y }) => Math.max(0, x * towards.x + y * towards.y));
        expectClose(reachOfEdge(piece, towards), above, 1e-5, scale);
      }),
      { numRuns: 150, seed: 5 },
    );
  });

  it("is what a little more metal along the outer edge adds, by really offsetting the outline", () => {
    for (const name of ["brass-limpet-one-tooth", "lantern-crab-s-shape", "pickled-heron-two-tooth"]) {
      const { outer } = outlineOf(name);
      const sum = outer.segments.map(momentOfEdge).reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }));
      const scale = outer.segments.reduce((length, piece) => length + lengthOf(piece), 0) * 100;
      const momentAt = (loop: Loop): Point => {
        const { areaMm2, centroidMm } = sectionOf({ outer: loop, inner: [] });
        return { x: areaMm2 * (centroidMm?.x ?? 0), y: areaMm2 * (centroidMm?.y ?? 0) };
      };
      const before = momentAt(outer);
      const errors = [0.4, 0.2, 0.1].map((distance) => {
        const after = momentAt(offsetOutwards(outer, distance).loop);
        return (
          Math.hypot((after.x - before.x) / distance - sum.x, (after.y - before.y) / distance - sum.y) / scale
        );
      });
      // Of first order: half the distance, half the error, and small beside the whole. On a symmetrical bar all cancels.
      expect(errors[0]).toBeLessThan(5e-3);
      if (name !== "brass-limpet-one-tooth") expect(Math.max(...errors)).toBeLessThan(1e-9);
      else for (const i of [1, 2]) expect((errors[i] ?? 1) / (errors[i - 1] ?? 1)).toBeLessThan(0.6);
    }
  });
});

describe("the edges of a loop", () => {
  it("are all of it, none shorter than asked, and weigh together what it weighs", () => {
    for (const name of ["brass-limpet-one-tooth", "quiet-kettle-disc", "old-bellwether-inch"]) {
      const { outer } = outlineOf(name);
      const edges = edgesOf(outer, 10);
      const length = outer.segments.reduce((sum, piece) => sum + lengthOf(piece), 0);
      expectClose(
        edges.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
        length,
        1e-12,
      );
      for (const { lengthMm } of edges) expect(lengthMm).toBeGreaterThanOrEqual(10);
      const x = edges.reduce((sum, { momentMm2 }) => sum + momentMm2.x, 0);
      expectClose(
        x,
        outer.segments.reduce((sum, piece) => sum + momentOfEdge(piece).x, 0),
        1e-9,
        length * 100,
      );
      expect(edges.length).toBeGreaterThan(1);
    }
  });

  it("bound the dimension across the loop: a circle's diameter in every direction", () => {
    const loop: Loop = { segments: [circle({ x: 7, y: 3 }, 20, NOWHERE)], source: NOWHERE };
    for (const angle of [0, 1, 2, 3])
      expectClose(widthOf(loop, { x: Math.cos(angle), y: Math.sin(angle) }), 40, 1e-12);
    const { outer } = outlineOf("brass-limpet-one-tooth");
    const [x0, y0, x1, y1] = sectionOf({ outer, inner: [] }).boundsMm;
    expectClose(widthOf(outer, { x: 1, y: 0 }), x1 - x0, 1e-12);
    expectClose(widthOf(outer, { x: 0, y: 1 }), y1 - y0, 1e-12);
  });
});
