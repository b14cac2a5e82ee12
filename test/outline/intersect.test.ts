import { Arc, Point as FlattenPoint, Segment as Straight } from "@flatten-js/core";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Point } from "../../geometry/language/design.ts";
import { intersections } from "../../geometry/outline/intersect.ts";
import type { Segment } from "../../geometry/outline/segment.ts";
import { distanceToSegment } from "../../geometry/outline/segment-geometry.ts";
import { reversedSegment } from "../../geometry/outline/transform.ts";
import { distance, wrapped } from "../../geometry/outline/vector.ts";
import { arc, line } from "../support/loops.ts";
import { randomSegment } from "./random-segments.ts";

const SEED = { seed: 20240503, numRuns: 3000 };

/** The same segment of the reference library. */
function reference(segment: Segment): Straight | Arc {
  const { from, to } = segment;
  if (segment.kind === "line")
    return new Straight(new FlattenPoint(from.x, from.y), new FlattenPoint(to.x, to.y));
  const { centre, radiusMm, startRad, sweepRad } = segment;
  const [start, end] = [wrapped(startRad), wrapped(startRad + sweepRad)];
  return new Arc(new FlattenPoint(centre.x, centre.y), radiusMm, start, end, sweepRad > 0);
}

function expectSamePoints(actual: readonly Point[], expected: readonly Point[], withinMm: number): void {
  expect(actual.length, JSON.stringify({ actual, expected })).toBe(expected.length);
  for (const point of expected) {
    expect(Math.min(...actual.map((other) => distance(point, other)))).toBeLessThan(withinMm);
  }
}

describe("two segments", () => {
  it("meet where the reference library finds them to meet", () => {
    let met = 0;
    fc.assert(
      fc.property(randomSegment, randomSegment, (a, b) => {
        const expected = reference(a).intersect(reference(b));
        expectSamePoints(intersections(a, b), expected, 1e-5);
        met += expected.length;
      }),
      SEED,
    );
    expect(met).toBeGreaterThan(400);
  });

  it("meet on both of them, the same whichever comes first and whichever way they run", () => {
    fc.assert(
      fc.property(randomSegment, randomSegment, (a, b) => {
        const points = intersections(a, b);
        for (const point of points) {
          expect(distanceToSegment(a, point)).toBeLessThan(1e-7);
          expect(distanceToSegment(b, point)).toBeLessThan(1e-7);
        }
        expectSamePoints(intersections(b, a), points, 1e-6);
        expectSamePoints(intersections(reversedSegment(a), b), points, 1e-6);
      }),
      SEED,
    );
  });
});

/** Each pair with the points where it meets. */
const TIES: readonly [what: string, a: Segment, b: Segment, meets: readonly [number, number][]][] = [
  ["crossing lines", line([0, 0], [10, 10]), line([0, 10], [10, 0]), [[5, 5]]],
  ["lines that share an end", line([0, 0], [10, 0]), line([10, 0], [10, 5]), [[10, 0]]],
  ["a line that ends on another", line([0, 0], [10, 0]), line([4, 0], [4, 5]), [[4, 0]]],
  ["parallel lines", line([0, 0], [10, 0]), line([0, 1], [10, 1]), []],
  ["lines in one line, apart", line([0, 0], [4, 0]), line([5, 0], [9, 0]), []],
  [
    "lines in one line, overlapping",
    line([0, 0], [6, 0]),
    line([4, 0], [9, 0]),
    [
      [6, 0],
      [4, 0],
    ],
  ],
  [
    "a line in another",
    line([0, 0], [9, 0]),
    line([2, 0], [4, 0]),
    [
      [2, 0],
      [4, 0],
    ],
  ],
  ["a line that would cross if it were longer", line([0, 0], [10, 0]), line([5, 5], [5, 0.001]), []],
  [
    "a line across a circle",
    line([-20, 0], [20, 0]),
    arc([0, 0], 10, 1, 2 * Math.PI),
    [
      [-10, 0],
      [10, 0],
    ],
  ],
  ["a tangent", line([-20, 10], [20, 10]), arc([0, 0], 10, 0, Math.PI), [[0, 10]]],
  ["a line beside a circle", line([-20, 10.001], [20, 10.001]), arc([0, 0], 10, 0, Math.PI), []],
  ["a line inside a circle", line([-5, 0], [5, 0]), arc([0, 0], 10, 0, 2 * Math.PI), []],
  [
    "a line and the half circle on its other side",
    line([-20, 1], [20, 1]),
    arc([0, 0], 10, Math.PI, Math.PI),
    [],
  ],
  [
    "circles that cross",
    arc([0, 0], 5, 0, 6.2),
    arc([6, 0], 5, 0.1, 6.2),
    [
      [3, 4],
      [3, -4],
    ],
  ],
  ["circles that touch from outside", arc([0, 0], 5, 1, 6), arc([8, 0], 3, 0, 6.28), [[5, 0]]],
  ["circles that touch from inside", arc([0, 0], 5, -1, 2), arc([3, 0], 2, -1, 2), [[5, 0]]],
  ["circles about one centre", arc([0, 0], 5, 0, 6), arc([0, 0], 4, 0, 6), []],
  ["circles one in the other", arc([0, 0], 5, 0, 6), arc([1, 0], 2, 0, 6), []],
  [
    "arcs of one circle, overlapping",
    arc([0, 0], 5, 0, Math.PI),
    arc([0, 0], 5, Math.PI / 2, Math.PI),
    [
      [-5, 0],
      [0, 5],
    ],
  ],
  ["arcs of one circle, apart", arc([0, 0], 5, 0, 1), arc([0, 0], 5, 2, 1), []],
  ["a tangent fillet's joint", line([0, 0], [10, 0]), arc([10, 4], 4, -Math.PI / 2, Math.PI / 2), [[10, 0]]],
];

describe("ties", () => {
  it.each(TIES)("%s", (_, a, b, meets) => {
    const expected = meets.map(([x, y]) => ({ x, y }));
    for (const [first, second] of [
      [a, b],
      [b, a],
      [reversedSegment(a), b],
      [a, reversedSegment(b)],
    ] as const) {
      expectSamePoints(intersections(first, second), expected, 1e-6);
    }
  });

  it("count an end within the tolerance as touching, and one beyond it not", () => {
    const wall = line([0, 0], [10, 0]);
    expect(intersections(wall, line([4, 9e-7], [4, 5]), 1e-6)).toHaveLength(1);
    expect(intersections(wall, line([4, 2e-6], [4, 5]), 1e-6)).toHaveLength(0);
  });
});
