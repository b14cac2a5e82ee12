import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arcByTangent } from "../../geometry/outline/arc.ts";
import { cornerCut, cornerFault, cornerTurn } from "../../geometry/outline/corner.ts";
import type { Segment } from "../../geometry/outline/segment.ts";
import { distanceToSegment, lengthOf, pointAt, tangentAt } from "../../geometry/outline/segment-geometry.ts";
import { distance, ORIGIN, polar, turnBetween } from "../../geometry/outline/vector.ts";
import { expectClose } from "../support/close-to.ts";
import { line } from "../support/loops.ts";
import { expectTrueArc } from "./joins.ts";

const SOURCE = { start: 0, end: 0 };
/** Thousandths, as a file has them. */
const within = (min: number, max: number) =>
  fc.integer({ min: Math.ceil(1e3 * min), max: Math.floor(1e3 * max) }).map((n) => n / 1e3);

/** A line or an arc that leaves the origin in a direction, curving by so much over its length. */
function leaving(angle: number, length: number, bend: number): Segment {
  const chord = length * (bend === 0 ? 1 : Math.sin(bend / 2) / (bend / 2));
  const end = polar(ORIGIN, chord, angle + bend / 2);
  return arcByTangent(ORIGIN, polar(ORIGIN, 1, angle), end, SOURCE);
}

const bend = fc.oneof(fc.constant(0), within(-2, 2));
const corner = fc.record({
  in: fc.record({ angle: within(-3, 3), length: within(20, 60), bend }),
  turn: fc.oneof(within(0.05, 2.8), within(-2.8, -0.05)),
  out: fc.record({ length: within(20, 60), bend }),
  size: within(0.1, 5),
});

interface Corner {
  readonly before: Segment;
  readonly after: Segment;
}

/** Two segments that meet in the origin with the given turn. */
function cornerOf(spec: {
  in: { angle: number; length: number; bend: number };
  turn: number;
  out: { length: number; bend: number };
}): Corner {
  const back = leaving(spec.in.angle + Math.PI, spec.in.length, spec.in.bend);
  const before: Segment =
    back.kind === "line"
      ? { ...back, from: back.to, to: back.from }
      : {
          ...back,
          from: back.to,
          to: back.from,
          startRad: back.startRad + back.sweepRad,
          sweepRad: -back.sweepRad,
        };
  return { before, after: leaving(spec.in.angle + spec.turn, spec.out.length, spec.out.bend) };
}

describe("a fillet", () => {
  it("is tangent to both sides, at points on both, and turns the way the corner does", () => {
    let made = 0;
    fc.assert(
      fc.property(corner, (spec) => {
        const { before, after } = cornerOf(spec);
        expectClose(cornerTurn([before], [after]), spec.turn, 1e-9, 1);
        const cut = cornerCut([before], [after], "round", spec.size, SOURCE);
        if (cut === null) return;
        made += 1;
        const { piece, beforeMm, afterMm } = cut;
        if (piece.kind !== "arc") throw new Error("a fillet is an arc");
        expectTrueArc(piece);
        expect(piece.radiusMm).toBe(spec.size);
        expect(Math.sign(piece.sweepRad)).toBe(Math.sign(spec.turn));
        const shareBefore = 1 - beforeMm / lengthOf(before);
        const shareAfter = afterMm / lengthOf(after);
        expect(distance(pointAt(before, shareBefore), piece.from)).toBeLessThan(1e-9);
        expect(distance(pointAt(after, shareAfter), piece.to)).toBeLessThan(1e-9);
        expect(Math.abs(turnBetween(tangentAt(before, shareBefore), tangentAt(piece, 0)))).toBeLessThan(1e-9);
        expect(Math.abs(turnBetween(tangentAt(piece, 1), tangentAt(after, shareAfter)))).toBeLessThan(1e-9);
      }),
      { seed: 20240506, numRuns: 1000 },
    );
    expect(made).toBeGreaterThan(700);
  });

  it("of a straight corner takes r·tan(φ/2) of each side", () => {
    fc.assert(
      fc.property(within(0.05, 2.5), within(0.5, 5), (turn, radius) => {
        const before = line([-50, 0], [0, 0]);
        const end = polar(ORIGIN, 50, turn);
        const cut = cornerCut([before], [line([0, 0], [end.x, end.y])], "round", radius, SOURCE);
        expectClose(cut?.beforeMm, radius * Math.tan(turn / 2), 1e-11, 50);
        expectClose(cut?.afterMm, radius * Math.tan(turn / 2), 1e-11, 50);
      }),
      { seed: 20240507, numRuns: 500 },
    );
  });

  it("between a line and a circle lies where elementary geometry puts it", () => {
    // The x axis up to the origin, then the circle of radius 50 about (0, 50) run backwards: a cusp's opposite, 90° on.
    const before = line([-60, 0], [0, 0]);
    const after: Segment = {
      kind: "arc",
      from: { x: 0, y: 0 },
      to: { x: 50, y: 50 },
      centre: { x: 50, y: 0 },
      radiusMm: 50,
      startRad: Math.PI,
      sweepRad: -Math.PI / 2,
      source: SOURCE,
    };
    const cut = cornerCut([before], [after], "round", 10, SOURCE);
    // Centre at height 10, outside the circle by 10: (50 − x)² + 10² = 60².
    const x = 50 - Math.sqrt(60 ** 2 - 10 ** 2);
    expect(cut?.piece).toMatchObject({ kind: "arc" });
    if (cut?.piece.kind !== "arc") return;
    expectClose(cut.piece.centre.x, x, 1e-12);
    expectClose(cut.piece.centre.y, 10, 1e-12);
    expectClose(cut.beforeMm, -x, 1e-12);
  });

  it("does not exist where its radius outgrows a side that bends the same way", () => {
    const { before, after } = cornerOf({
      in: { angle: 0, length: 30, bend: 0 },
      turn: 1,
      out: { length: 20, bend: 2 },
    });
    expect(cornerCut([before], [after], "round", 11, SOURCE)).toBeNull();
    expect(cornerCut([before], [after], "round", 2, SOURCE)).not.toBeNull();
  });
});

describe("a bevel", () => {
  it("cuts so far along each side from the corner", () => {
    fc.assert(
      fc.property(corner, (spec) => {
        const { before, after } = cornerOf(spec);
        const cut = cornerCut([before], [after], "bevel", spec.size, SOURCE);
        expect(cut?.piece.kind).toBe("line");
        if (!cut) return;
        expect(distance(cut.piece.from, pointAt(before, 1 - spec.size / lengthOf(before)))).toBeLessThan(
          1e-9,
        );
        expect(distance(cut.piece.to, pointAt(after, spec.size / lengthOf(after)))).toBeLessThan(1e-9);
        expect(distanceToSegment(before, cut.piece.from)).toBeLessThan(1e-9);
      }),
      { seed: 20240508, numRuns: 500 },
    );
  });

  it("does not exist beyond the shorter side", () => {
    const [before, after] = [line([-50, 0], [0, 0]), line([0, 0], [0, 10])];
    expect(cornerCut([before], [after], "bevel", 10, SOURCE)).not.toBeNull();
    expect(cornerCut([before], [after], "bevel", 10.001, SOURCE)).toBeNull();
  });
});

describe("no corner", () => {
  it("is told apart from a very flat and a very sharp one", () => {
    expect(cornerFault(0)).toBe("straight");
    expect(cornerFault(1e-7)).toBe("straight");
    expect(cornerFault(1e-5)).toBeNull();
    expect(cornerFault(1e-5 - Math.PI)).toBeNull();
    expect(cornerFault(Math.PI)).toBe("doubled-back");
  });
});
