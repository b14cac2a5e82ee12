/** Outward offsets against closed forms, and where each piece of them comes from. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type OffsetLoop, offsetOutwards } from "../../geometry/outline/offset/offset.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import {
  distanceToSegment,
  normalAt,
  perimeterOf,
  pointAt,
  signedAreaOf,
} from "../../geometry/outline/segment-geometry.ts";
import { distance, plus, times } from "../../geometry/outline/vector.ts";
import { expectClose } from "../support/close-to.ts";
import { type BulgeCorner, bulgeLoop, circle, polygon, rectangle } from "../support/loops.ts";
import { collinear, cusp, disc, manySided, ODD_CASES, pocketed, slotted } from "./offset-cases.ts";

const EXACT = 1e-12;

function expectFigures({ loop }: OffsetLoop, areaMm2: number, perimeterMm: number): void {
  expectClose(signedAreaOf(loop), areaMm2, EXACT);
  expectClose(perimeterOf(loop), perimeterMm, EXACT);
}

/** Steiner's formulas for a convex region: area A + P·c + πc², perimeter P + 2πc. */
function expectConvex(outer: Loop, c: number): void {
  const [area, perimeter] = [signedAreaOf(outer), perimeterOf(outer)];
  expectFigures(
    offsetOutwards(outer, c),
    area + perimeter * c + Math.PI * c * c,
    perimeter + 2 * Math.PI * c,
  );
}

const DISTANCES = [1e-6, 0.01, 1, 7.3, 40, 1000];

/** Corners on a circle, each side a chord or bulging out no farther than the circle: convex. */
const convexLoop: fc.Arbitrary<Loop> = fc
  .array(
    fc.record({ gap: fc.double({ min: 0.05, max: 1, noNaN: true }), share: fc.constantFrom(0, 0.3, 0.9, 1) }),
    { minLength: 3, maxLength: 40 },
  )
  .map((sides) => {
    const whole = sides.reduce((sum, { gap }) => sum + gap, 0);
    let angle = 0.2;
    return bulgeLoop(
      sides.map(({ gap, share }): BulgeCorner => {
        const from = angle;
        const sweep = (2 * Math.PI * gap) / whole;
        angle += sweep;
        return [15 + 80 * Math.cos(from), 80 * Math.sin(from), share * Math.tan(sweep / 4)];
      }),
    );
  });

describe("the offset of a convex outline", () => {
  it.each([
    { name: "a rectangle", outer: rectangle(-30, -20, 40, 10) },
    { name: "a rectangle of many collinear sides", outer: collinear },
    { name: "a disc of one arc", outer: circle(30, [4, 5]) },
    { name: "a disc of two arcs", outer: disc(30, 2) },
    { name: "a disc of nine arcs", outer: disc(30, 9, [40, -7]) },
    { name: "a polygon of 500 sides", outer: manySided(60, 500) },
  ])("has the area and perimeter of Steiner's formulas: $name", ({ outer }) => {
    for (const c of DISTANCES) expectConvex(outer, c);
  });

  it("has them at random", () => {
    fc.assert(
      fc.property(convexLoop, fc.constantFrom(...DISTANCES), (outer, c) => expectConvex(outer, c)),
      { seed: 20261, numRuns: 300 },
    );
  });

  it("is a line for each line, an arc for each arc and an arc about each corner", () => {
    const { loop, sources } = offsetOutwards(rectangle(0, 0, 4, 2), 1);
    expect(loop.segments.map(({ kind }) => kind)).toEqual([0, 1, 2, 3].flatMap(() => ["line", "arc"]));
    expect(sources).toEqual(
      [0, 1, 2, 3].flatMap((index) => [
        { kind: "segment", index },
        { kind: "corner", index },
      ]),
    );
    expect(offsetOutwards(disc(30, 5), 2).loop.segments.length).toBe(5);
    expect(offsetOutwards(circle(30), 2).loop.segments).toMatchObject([
      { radiusMm: 32, sweepRad: 2 * Math.PI },
    ]);
  });
});

describe("the offset of a concave outline", () => {
  it("loses a square at each inner corner of an L", () => {
    const ell = polygon([
      [0, 0],
      [60, 0],
      [60, 20],
      [25, 20],
      [25, 50],
      [0, 50],
    ]);
    for (const c of [1e-6, 0.1, 3, 14.9]) {
      // Five corners of a quarter turn each add a quarter disc; at the sixth the two strips share a square.
      const area = signedAreaOf(ell) + perimeterOf(ell) * c + ((5 * Math.PI) / 4 - 1) * c * c;
      expectFigures(offsetOutwards(ell, c), area, perimeterOf(ell) + ((5 * Math.PI) / 2 - 2) * c);
    }
  });

  it("shrinks a round hollow about its centre, until nothing is left of it", () => {
    // A block of 60 by 30 with a half-round hollow of radius 10 in its upper side.
    const outer = bulgeLoop([
      [-30, -30, 0],
      [30, -30, 0],
      [30, 0, 0],
      [10, 0, -1],
      [-10, 0, 0],
      [-30, 0, 0],
    ]);
    for (const c of [0.5, 9.999]) {
      // The arcs about the hollow's two corners end where they meet its walls, upright: quarter discs.
      const strip = 2 * (60 + 30) * c + Math.PI * c * c;
      const added = strip - 20 * c + (Math.PI / 2) * c * c;
      const hollow = (Math.PI / 2) * (10 - c) ** 2;
      const area = 60 * 30 + added - hollow;
      expectClose(signedAreaOf(offsetOutwards(outer, c).loop), area, EXACT);
    }
    for (const c of [10, 10.001, 35]) expectSlotClosed(outer, 60, 30, 20, c);
  });

  it("closes a slot off, whatever is below", () => {
    for (const c of [4, 4.001, 7, 90]) {
      expectSlotClosed(slotted(8, false), 100, 80, 8, c);
      expectSlotClosed(slotted(8, true), 100, 80, 8, c);
      expectSlotClosed(pocketed(8), 100, 80, 8, c);
    }
  });

  it("turns half a turn about a spike, and not at all in a slit", () => {
    const tip = offsetOutwards(cusp, 2).loop.segments.find(
      (segment) => segment.kind === "arc" && segment.centre.x === 0 && segment.centre.y === 30,
    );
    expect(tip).toMatchObject({ radiusMm: 2 });
    expectClose(tip?.kind === "arc" ? tip.sweepRad : 0, Math.PI, 1e-9);
  });
});

/**
 * A block with a slot of width w that two arcs of radius c ≥ w/2 about its upper corners close off. They meet at
 * √(c² − w²/4) above it, and below them is ∫√(c² − x²)dx on each side.
 */
function expectSlotClosed(outer: Loop, width: number, height: number, w: number, c: number): void {
  const half = w / 2;
  const rise = Math.sqrt(Math.max(0, c * c - half * half));
  const below = half * rise + c * c * Math.asin(Math.min(1, half / c));
  const block = width * height + 2 * (width + height) * c + Math.PI * c * c;
  const perimeter = 2 * (width + height) + 2 * Math.PI * c - w + 2 * c * Math.asin(Math.min(1, half / c));
  expectFigures(offsetOutwards(outer, c), block - (w * c - below), perimeter);
}

describe("the sources of an offset", () => {
  const cases = ODD_CASES.flatMap(({ name, outer, distancesMm }) =>
    distancesMm.map((c) => ({ name, outer, c })),
  );

  it.each(cases)("are where each point comes from along its normal: $name, $c mm", ({ outer, c }) => {
    const { loop, sources } = offsetOutwards(outer, c);
    expect(sources.length).toBe(loop.segments.length);
    for (const [i, segment] of loop.segments.entries()) {
      const source = sources[i];
      const origin = outer.segments[source?.index ?? -1];
      if (source === undefined || origin === undefined) throw new Error("a segment without a source");
      if (source.kind === "corner") {
        expect(segment).toMatchObject({ kind: "arc", centre: origin.to, radiusMm: c });
        continue;
      }
      expect(segment.kind).toBe(origin.kind);
      if (segment.kind === "arc" && origin.kind === "arc") {
        expect(segment.centre).toEqual(origin.centre);
        expect(segment.radiusMm).toBe(origin.radiusMm + Math.sign(origin.sweepRad) * c);
      }
      for (const fraction of [0, 0.2, 0.5, 1]) {
        const foot = plus(pointAt(segment, fraction), times(normalAt(segment, fraction), c));
        expect(distanceToSegment(origin, foot)).toBeLessThan(1e-9 * (100 + c));
      }
    }
  });
});

describe("an offset", () => {
  it("by nothing is the loop itself", () => {
    const outer = slotted(8, true);
    const { loop, sources } = offsetOutwards(outer, 0);
    expect(loop).toBe(outer);
    expect(sources).toEqual(outer.segments.map((_, index) => ({ kind: "segment", index })));
  });

  it("has its neighbours' ends at exactly one point", () => {
    for (const { outer, distancesMm } of ODD_CASES) {
      for (const c of distancesMm) {
        const { segments } = offsetOutwards(outer, c).loop;
        for (const [i, { from }] of segments.entries()) {
          const before = segments.at(i - 1)?.to ?? from;
          expect(distance(before, from)).toBe(0);
        }
      }
    }
  });

  it("needs a distance", () => {
    for (const c of [-1, Number.NaN, Infinity]) {
      expect(() => offsetOutwards(rectangle(0, 0, 1, 1), c)).toThrow(RangeError);
    }
  });
});
