import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Loop, Segment } from "../../geometry/outline/segment.ts";
import { perimeterOf, pointAt, signedAreaOf } from "../../geometry/outline/segment-geometry.ts";
import {
  mirroredLoop,
  mirroredSegment,
  movedLoop,
  movedSegment,
  reversedLoop,
  reversedSegment,
  shift,
  turn,
  turnByShare,
} from "../../geometry/outline/transform.ts";
import { distance } from "../../geometry/outline/vector.ts";
import { expectClose } from "../support/close-to.ts";
import { soundOutline } from "../support/random-outlines.ts";
import { randomAngle, randomPoint, randomSegment } from "./random-segments.ts";

const SEED = { seed: 20240502, numRuns: 200 };
const axis = fc.constantFrom("x" as const, "y" as const);

/** Both run over the same points at the same fractions. */
function expectSameRun(a: Segment, b: Segment): void {
  for (const fraction of [0, 0.2, 0.5, 0.9, 1]) {
    expect(distance(pointAt(a, fraction), pointAt(b, fraction))).toBeLessThan(1e-9);
  }
}

function expectSameSize(a: Loop, b: Loop, sign: 1 | -1): void {
  const size = perimeterOf(a) ** 2;
  expectClose(signedAreaOf(b), sign * signedAreaOf(a), 1e-12, size);
  expectClose(perimeterOf(b), perimeterOf(a), 1e-12);
}

describe("a moved segment", () => {
  it("runs over the moved points, arcs staying arcs", () => {
    fc.assert(
      fc.property(randomSegment, randomAngle, randomPoint, axis, (segment, angle, by, mirror) => {
        for (const fraction of [0, 0.3, 1]) {
          const { x, y } = pointAt(segment, fraction);
          const turned = turn(angle).point({ x, y });
          const mirrored = mirror === "x" ? { x, y: -y } : { x: -x, y };
          const moved = { x: x + by.x, y: y + by.y };
          expect(distance(pointAt(movedSegment(segment, turn(angle)), fraction), turned)).toBeLessThan(1e-9);
          expect(distance(pointAt(mirroredSegment(segment, mirror), fraction), mirrored)).toBeLessThan(1e-9);
          expect(distance(pointAt(movedSegment(segment, shift(by)), fraction), moved)).toBeLessThan(1e-9);
        }
        expect(movedSegment(segment, turn(angle)).kind).toBe(segment.kind);
        expect(mirroredSegment(segment, mirror).kind).toBe(segment.kind);
      }),
      SEED,
    );
  });

  it("is itself again after two reflections, and after two reversals", () => {
    fc.assert(
      fc.property(randomSegment, axis, (segment, mirror) => {
        expectSameRun(mirroredSegment(mirroredSegment(segment, mirror), mirror), segment);
        const twice = reversedSegment(reversedSegment(segment));
        expectSameRun(twice, segment);
        expect([twice.from, twice.to, twice.source]).toEqual([segment.from, segment.to, segment.source]);
      }),
      SEED,
    );
  });

  it("runs backwards when reversed", () => {
    fc.assert(
      fc.property(randomSegment, fc.double({ min: 0, max: 1, noNaN: true }), (segment, fraction) => {
        const [there, back] = [pointAt(segment, fraction), pointAt(reversedSegment(segment), 1 - fraction)];
        expect(distance(there, back)).toBeLessThan(1e-9);
      }),
      SEED,
    );
  });

  it("is turned exactly by quarters, without −0", () => {
    for (const motion of [turnByShare(1, 4), turn(Math.PI / 2)]) {
      expect(motion.point({ x: 100, y: 0 })).toEqual({ x: 0, y: 100 });
    }
    expect(turnByShare(2, 4).point({ x: 100, y: 0 })).toEqual({ x: -100, y: 0 });
    expect(turnByShare(1, 2).point({ x: 0, y: 7 })).toEqual({ x: 0, y: -7 });
    const onAxis = mirroredSegment(
      { kind: "line", from: { x: 1, y: 0 }, to: { x: 2, y: 3 }, source: { start: 0, end: 0 } },
      "x",
    );
    expect(onAxis.from).toEqual({ x: 1, y: 0 });
  });
});

describe("a moved loop", () => {
  it("keeps its area and its length; a reflection and a reversal turn the area's sign", () => {
    fc.assert(
      fc.property(soundOutline, randomAngle, randomPoint, axis, ({ outer }, angle, by, mirror) => {
        expectSameSize(outer, movedLoop(outer, turn(angle)), 1);
        expectSameSize(outer, movedLoop(outer, shift(by)), 1);
        expectSameSize(outer, mirroredLoop(outer, mirror), -1);
        expectSameSize(outer, reversedLoop(outer), -1);
      }),
      SEED,
    );
  });

  it("stays closed without a gap", () => {
    fc.assert(
      fc.property(soundOutline, randomAngle, ({ outer }, angle) => {
        for (const { segments } of [
          movedLoop(outer, turn(angle)),
          reversedLoop(outer),
          mirroredLoop(outer, "x"),
        ]) {
          for (const [i, segment] of segments.entries()) {
            const last = segments.at(i - 1)?.to;
            expect(segment.from).toEqual(last);
          }
        }
      }),
      SEED,
    );
  });
});
