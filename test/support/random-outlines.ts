/** Sound outlines at random: star-shaped, of lines and arcs, with round, slotted and cut-out holes that touch nothing. */
import fc from "fast-check";
import type { Loop, Outline } from "../../geometry/outline/segment.ts";
import { type Motion, movedLoop, shift, turn } from "../../geometry/outline/transform.ts";
import { type BulgeCorner, bulgeLoop, circle, outlineOf, polygon, slot } from "./loops.ts";

const unit = fc.double({ min: 0, max: 1, noNaN: true });
const within = (min: number, max: number) => unit.map((share) => min + share * (max - min));

/**
 * A loop of radius 60 to 130 about the origin. Corners keep 60 % of their equal spacing and bulges stay small enough
 * that no two pieces can meet; nothing of it comes nearer to the origin than 26.
 */
const starLoop: fc.Arbitrary<Loop> = fc.integer({ min: 5, max: 10 }).chain((corners) => {
  const bulge = fc.oneof(fc.constant(0), within(-0.1, 0.25));
  const corner = fc.record({ jitter: within(-0.2, 0.2), radius: within(60, 130), bulge });
  return fc.array(corner, { minLength: corners, maxLength: corners }).map((list) =>
    bulgeLoop(
      list.map(({ jitter, radius, bulge }, i): BulgeCorner => {
        const angle = ((i + jitter) * 2 * Math.PI) / corners;
        return [radius * Math.cos(angle), radius * Math.sin(angle), bulge];
      }),
    ),
  );
});

/** A hole within 5 of the origin. */
const smallHole: fc.Arbitrary<Loop> = fc.oneof(
  within(0.5, 5).map((radius) => circle(radius)),
  fc.tuple(within(0.2, 2), within(1, 5), within(0, 3)).map(([half, width, angle]) => {
    const [x, y] = [half * Math.cos(angle), half * Math.sin(angle)];
    return slot([-x, -y], [x, y], width);
  }),
  within(1, 5).map((size) =>
    polygon([
      [-size * 0.7, -size * 0.5],
      [size * 0.9, -size * 0.3],
      [size * 0.2, size * 0.6],
    ]),
  ),
);

/** Up to five holes about a circle of radius 18, and a bore or none. */
const holes: fc.Arbitrary<Loop[]> = fc
  .record({
    bore: fc.option(within(3, 10)),
    ring: fc.array(smallHole, { maxLength: 5 }),
    start: within(0, 6.2),
  })
  .map(({ bore, ring, start }) => [
    ...(bore === null ? [] : [circle(bore)]),
    ...ring.map((hole, i) => {
      const angle = start + (2 * Math.PI * i) / 5;
      return movedLoop(hole, shift({ x: 18 * Math.cos(angle), y: 18 * Math.sin(angle) }));
    }),
  ]);

/** Sound outlines of every kind of segment and hole, turned and set off from the axis at random. */
export const soundOutline: fc.Arbitrary<Outline> = fc
  .record({ outer: starLoop, inner: holes, angle: within(-3, 3), x: within(-80, 80), y: within(-80, 80) })
  .map(({ outer, inner, angle, x, y }) =>
    movedOutline(movedOutline(outlineOf(outer, ...inner), turn(angle)), shift({ x, y })),
  );

/** The outline moved as a whole; a reflected one is turned to run the way it has to. */
export function movedOutline({ outer, inner }: Outline, motion: Motion): Outline {
  return outlineOf(movedLoop(outer, motion), ...inner.map((loop) => movedLoop(loop, motion)));
}
