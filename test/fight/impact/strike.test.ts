import { describe, expect, it } from "vitest";
import { spinSign, strikeAt, strikeAtHeight } from "../../../geometry/fight/impact/strike.ts";
import type { Point } from "../../../geometry/language/design.ts";
import { dot, leftOf, norm, times, unit } from "../../../geometry/outline/vector.ts";

function expectPoint(actual: Point | undefined, x: number, y: number): void {
  expect(actual?.x).toBeCloseTo(x, 14);
  expect(actual?.y).toBeCloseTo(y, 14);
}

describe("a strike", () => {
  it("level with the axle pushes straight up with the front edge moving up, and down with it moving down", () => {
    expectPoint(strikeAt(0.2, 0, "up").atM, 0.2, 0);
    expectPoint(strikeAt(0.2, 0, "up").along, 0, 1);
    expectPoint(strikeAt(0.2, 0, "down").along, 0, -1);
  });

  it("at the lowest point pushes ahead with the front edge moving up, and back with it moving down", () => {
    expectPoint(strikeAt(0.2, -Math.PI / 2, "up").along, 1, 0);
    expectPoint(strikeAt(0.2, -Math.PI / 2, "down").along, -1, 0);
  });

  it("at a height lies on the tip circle ahead of the axle; out of its reach there is none", () => {
    expectPoint(strikeAtHeight(0.2, 0.12, "up")?.atM, 0.16, 0.12);
    expectPoint(strikeAtHeight(0.2, -0.2, "down")?.atM, 0, -0.2);
    expect(strikeAtHeight(0.2, 0.201, "up")).toBeNull();
  });

  it.each(["up", "down"] as const)(
    "pushes the way the tooth moves, edge %s, leaning outwards by the strike angle",
    (edge) => {
      for (const [level, skid] of [
        [0.4, 0],
        [-0.9, 0.35],
        [1.2, -0.2],
      ] as const) {
        const { atM, along } = strikeAt(0.13, level, edge, skid);
        const moves = times(leftOf(unit(atM)), spinSign(edge));
        expect(norm(along)).toBeCloseTo(1, 14);
        expect(dot(along, moves)).toBeCloseTo(Math.cos(skid), 14);
        expect(dot(along, unit(atM))).toBeCloseTo(Math.sin(skid), 14);
      }
    },
  );
});
