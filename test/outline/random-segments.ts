/** Lines and arcs at random, on a plane as large as a bar. Lengths in mm, angles in rad. */
import fc from "fast-check";
import type { Point } from "../../geometry/language/design.ts";
import type { ArcSegment, LineSegment, Segment } from "../../geometry/outline/segment.ts";
import { distance } from "../../geometry/outline/vector.ts";
import { arc, line } from "../support/loops.ts";

/** Thousandths, as a file has them: no near misses by a few roundings, on which libraries may well differ. */
const thousandths = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 1e3 * min, max: 1e3 * max }).map((n) => n / 1e3);

const coordinate = thousandths(-100, 100);
export const randomPoint: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate });
export const randomAngle = thousandths(-7, 7);

const randomLine: fc.Arbitrary<LineSegment> = fc
  .tuple(randomPoint, randomPoint)
  .filter(([a, b]) => distance(a, b) > 0.01)
  .map(([a, b]) => line([a.x, a.y], [b.x, b.y]));

const sweep = fc.tuple(thousandths(0.01, 6.27), fc.constantFrom(1, -1)).map(([size, sign]) => size * sign);

const randomArc: fc.Arbitrary<ArcSegment> = fc
  .record({
    centre: randomPoint,
    radius: thousandths(1, 90),
    start: randomAngle,
    sweep,
  })
  .map(({ centre, radius, start, sweep }) => arc([centre.x, centre.y], radius, start, sweep));

export const randomSegment: fc.Arbitrary<Segment> = fc.oneof(randomLine, randomArc);
