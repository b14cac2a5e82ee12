import { describe, expect, it } from "vitest";
import { bridgesBelow } from "../../geometry/outline/check/bridges.ts";
import { layoutOf } from "../../geometry/outline/check/layout.ts";
import { circle, outlineOf, toothed } from "../support/loops.ts";

describe("ten thousand segments", () => {
  const outline = outlineOf(toothed(10_000, 130), circle(11), circle(5, [60, 0]));

  it("are checked for crossings", () => {
    expect(layoutOf(outline).crossed.size).toBe(0);
  });

  it("and for bridges too, even with a cutout along the whole edge", () => {
    const ringed = outlineOf(toothed(5_000, 130), toothed(5_000, 125));
    const { segments } = layoutOf(ringed);
    expect(bridgesBelow(segments, 12, () => true)[0]?.gap.distanceMm).toBeCloseTo(4.98, 1);
  });
});
