import { describe, expect, it } from "vitest";
import { bridgesBelow } from "../../geometry/outline/check/bridges.ts";
import { layoutOf } from "../../geometry/outline/check/layout.ts";
import { circle, outlineOf, polygon } from "../support/loops.ts";

/** A toothed disc of so many straight pieces. */
const toothed = (count: number, middle: number) =>
  polygon(
    Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count;
      const radius = middle + (i % 2) * 0.01;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  );

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
