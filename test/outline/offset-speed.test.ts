import { describe, expect, it } from "vitest";
import { offsetOutwards } from "../../geometry/outline/offset/offset.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { type BulgeCorner, bulgeLoop } from "../support/loops.ts";

/** A wheel of teeth 20 mm high, a quarter as many as segments, their tips and gullets arcs. */
function wheel(segments: number): Loop {
  const share = (2 * Math.PI) / segments;
  return bulgeLoop(
    Array.from({ length: segments / 4 }, (_, tooth) => {
      const start = 4 * tooth * share;
      const [tip, root] = [120 + (tooth % 7) * 0.1, 100 + (tooth % 5) * 0.25];
      const corner = (radius: number, at: number, bulge: number): BulgeCorner => [
        radius * Math.cos(start + at * share),
        radius * Math.sin(start + at * share),
        bulge,
      ];
      const bulge = Math.tan(share / 2);
      return [corner(tip, 0, bulge), corner(tip, 2, 0), corner(root, 2, bulge), corner(root, 4, 0)];
    }).flat(),
  );
}

/** The fastest of some runs, in ms: what the work takes, whatever else the machine is doing. */
function fastest(runs: number, run: () => void): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return Math.min(...times);
}

describe("ten times the segments", () => {
  const [small, large] = [wheel(1000), wheel(10_000)];

  it.each([0.5, 5, 1200])("take far less than a hundred times as long to offset, by %d mm", (c) => {
    expect(offsetOutwards(large, c).loop.segments.length).toBeGreaterThan(1000);
    const ratio = fastest(2, () => offsetOutwards(large, c)) / fastest(4, () => offsetOutwards(small, c));
    expect(ratio, `${ratio} times`).toBeLessThan(40);
  });
});
