/** What holds of every outward offset, on outlines at random: hooked, re-entrant, of lines and arcs. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../geometry/language/design.ts";
import { isInside } from "../../geometry/outline/check/inside.ts";
import { layoutOf } from "../../geometry/outline/check/layout.ts";
import { flatten } from "../../geometry/outline/flatten.ts";
import { offsetOutwards } from "../../geometry/outline/offset/offset.ts";
import type { Loop, Segment } from "../../geometry/outline/segment.ts";
import { boundsOfLoop, pointAt, signedAreaOf } from "../../geometry/outline/segment-geometry.ts";
import { movedLoop, reflection, reversedLoop, turn } from "../../geometry/outline/transform.ts";
import { times } from "../../geometry/outline/vector.ts";
import { randomBar } from "../bite/random-bars.ts";
import { expectClose } from "../support/close-to.ts";
import { polygon } from "../support/loops.ts";
import { soundOutline } from "../support/random-outlines.ts";
import { ODD_CASES } from "./offset-cases.ts";

/** What the offset's points may be off by, as a share of the size of the offset. */
const OFF_BY = 1e-9;

const isSimple = (outer: Loop): boolean => layoutOf({ outer, inner: [] }).crossed.size === 0;

const bar = fc
  .integer({ min: 1, max: 100_000 })
  .map(randomBar)
  // The maker looks at chords; a few bars cross themselves between them.
  .filter(isSimple);
const facetted = bar.map((outer) =>
  polygon(flatten(outer, 0.05).map(({ x, y }): [number, number] => [x, y])),
);
const anyOutline = fc.oneof(
  { weight: 3, arbitrary: bar },
  soundOutline.map(({ outer }) => outer),
  facetted.filter(isSimple),
);
/** Even over a range, where the doubles of the library crowd about 0. */
const within = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1e6 }).map((n) => min + (n / 1e6) * (max - min));
const anyDistance = fc.oneof(fc.constantFrom(1e-6, 0.5, 2, 1200), within(-4, 5.5).map(Math.exp));

/** The distance from a point to an outline, looked for anew: feet on lines, and on arcs by the angle about the centre. */
function distanceTo(outer: Loop, { x, y }: Point): number {
  return outer.segments.reduce((least, segment) => Math.min(least, distanceToOne(segment, x, y)), Infinity);
}

function distanceToOne(segment: Segment, x: number, y: number): number {
  const { from, to } = segment;
  const ends = Math.min(Math.hypot(x - from.x, y - from.y), Math.hypot(x - to.x, y - to.y));
  if (segment.kind === "line") {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const along = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy);
    const beside = Math.abs((x - from.x) * dy - (y - from.y) * dx) / Math.hypot(dx, dy);
    return along > 0 && along < 1 ? beside : ends;
  }
  const { centre, radiusMm, startRad, sweepRad } = segment;
  const middle = startRad + sweepRad / 2;
  const fromMiddle = Math.atan2(y - centre.y, x - centre.x) - middle;
  const apart = Math.abs(Math.atan2(Math.sin(fromMiddle), Math.cos(fromMiddle)));
  const isBeside = apart < Math.abs(sweepRad) / 2;
  return isBeside ? Math.abs(Math.hypot(x - centre.x, y - centre.y) - radiusMm) : ends;
}

const sizeOf = (outer: Loop, distanceMm: number): number => {
  const { minX, minY, maxX, maxY } = boundsOfLoop(outer);
  return Math.max(-minX, -minY, maxX, maxY) + distanceMm;
};

/** A simple counter-clockwise loop, all of it at the distance: nothing else can be, once nothing is left out of it. */
function expectAtDistance(outer: Loop, distanceMm: number): void {
  const { loop } = offsetOutwards(outer, distanceMm);
  let worst = 0;
  for (const segment of loop.segments) {
    for (const fraction of [0, 0.001, 0.4, 1]) {
      const off = distanceTo(outer, pointAt(segment, fraction)) - distanceMm;
      worst = Math.max(worst, Math.abs(off));
    }
  }
  expect(worst).toBeLessThanOrEqual(OFF_BY * sizeOf(outer, distanceMm));
  expect(signedAreaOf(loop)).toBeGreaterThan(signedAreaOf(outer));
  // The check of meetings takes points within a nanometre for one, which an offset by one has many of.
  if (distanceMm > 0.01) expect(isSimple(loop)).toBe(true);
}

describe("an outward offset", () => {
  it("is at its distance from the outline everywhere, simple and counter-clockwise", () => {
    fc.assert(fc.property(anyOutline, anyDistance, expectAtDistance), { seed: 20262, numRuns: 250 });
  });

  it.each(ODD_CASES)("is so of $name, turned any way", ({ outer, distancesMm }) => {
    for (const angle of [0, 0.7, Math.PI / 2]) {
      for (const c of distancesMm) expectAtDistance(movedLoop(outer, turn(angle)), c);
    }
  });

  it("leaves out nothing that is nearer", () => {
    const share = within(0, 1);
    const seen = { near: 0, far: 0 };
    fc.assert(
      fc.property(
        anyOutline,
        anyDistance,
        fc.array(fc.tuple(share, share, share), { minLength: 20, maxLength: 20 }),
        (outer, c, places) => {
          const { loop } = offsetOutwards(outer, c);
          const slack = OFF_BY * sizeOf(outer, c);
          for (const [along, angleShare, far] of places) {
            const segment = outer.segments[Math.floor(along * (outer.segments.length - 1e-9))];
            if (segment === undefined) continue;
            const start = pointAt(segment, 0.5);
            const reach = 1.5 * c * far;
            const point = {
              x: start.x + reach * Math.cos(2 * Math.PI * angleShare),
              y: start.y + reach * Math.sin(2 * Math.PI * angleShare),
            };
            const isNear = distanceTo(outer, point) < c - slack || isInside(outer, point);
            seen[isNear ? "near" : "far"] += 1;
            if (isNear) expect(isInside(loop, point)).toBe(true);
          }
        },
      ),
      { seed: 20263, numRuns: 150 },
    );
    expect(Math.min(seen.near, seen.far)).toBeGreaterThan(300);
  });

  it("comes to the same in two steps as in one", () => {
    fc.assert(
      fc.property(anyOutline, within(-4, 4).map(Math.exp), within(0.05, 0.95), (outer, c, share) => {
        const once = signedAreaOf(offsetOutwards(outer, c).loop);
        const first = offsetOutwards(outer, share * c).loop;
        expectClose(signedAreaOf(offsetOutwards(first, c - share * c).loop), once, 1e-10);
      }),
      { seed: 20264, numRuns: 150 },
    );
  });

  it("turns, mirrors and scales with its outline", () => {
    fc.assert(
      fc.property(
        anyOutline,
        anyDistance,
        within(-3, 3),
        fc.constantFrom(1e-3, 25.4),
        (outer, c, by, factor) => {
          const area = signedAreaOf(offsetOutwards(outer, c).loop);
          const turned = movedLoop(outer, turn(by));
          expectClose(signedAreaOf(offsetOutwards(turned, c).loop), area, 1e-10);
          const mirrored = reversedLoop(movedLoop(turned, reflection("x")));
          expectClose(signedAreaOf(offsetOutwards(mirrored, c).loop), area, 1e-10);
          const larger = offsetOutwards(scaled(outer, factor), factor * c).loop;
          expectClose(signedAreaOf(larger), factor * factor * area, 1e-10);
        },
      ),
      { seed: 20265, numRuns: 100 },
    );
  });

  it("grows with its distance", () => {
    fc.assert(
      fc.property(anyOutline, anyDistance, (outer, c) => {
        const [less, more] = [c, 1.01 * c].map((by) => offsetOutwards(outer, by).loop);
        if (less === undefined || more === undefined) return;
        expect(signedAreaOf(more)).toBeGreaterThan(signedAreaOf(less));
      }),
      { seed: 20266, numRuns: 100 },
    );
  });
});

function scaled(loop: Loop, factor: number): Loop {
  const segments = loop.segments.map((segment): Segment => {
    const ends = { from: times(segment.from, factor), to: times(segment.to, factor) };
    if (segment.kind === "line") return { ...segment, ...ends };
    return {
      ...segment,
      ...ends,
      centre: times(segment.centre, factor),
      radiusMm: factor * segment.radiusMm,
    };
  });
  return { ...loop, segments };
}
