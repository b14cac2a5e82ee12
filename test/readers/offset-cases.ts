/** What the independent readers offset: odd outlines and random ones, and how their answer has to lie. */
import { expect } from "vitest";
import type { Point } from "../../geometry/language/design.ts";
import { isInside } from "../../geometry/outline/check/inside.ts";
import { layoutOf } from "../../geometry/outline/check/layout.ts";
import { offsetOutwards } from "../../geometry/outline/offset/offset.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { signedAreaOf } from "../../geometry/outline/segment-geometry.ts";
import { randomBar } from "../bite/random-bars.ts";
import { ODD_CASES } from "../outline/offset-cases.ts";

export interface OffsetCase {
  readonly name: string;
  readonly outer: Loop;
  readonly distanceMm: number;
}

const seeds = Array.from({ length: 40 }, (_, i) => 900 + i);
const outlines = [
  ...ODD_CASES.map(({ name, outer }) => ({ name, outer })),
  ...seeds.map((seed) => ({ name: `random bar ${seed}`, outer: randomBar(seed) })),
].filter(({ outer }) => layoutOf({ outer, inner: [] }).crossed.size === 0);

/** None of the distances just closes a slot of the odd outlines; the readers' chords could not tell. */
export const OFFSET_CASES: readonly OffsetCase[] = outlines.flatMap(({ name, outer }) =>
  [0.3, 3.7, 12, 60].map((distanceMm) => ({ name: `${name}, ${distanceMm} mm`, outer, distanceMm })),
);

/**
 * A reader's offset strays by its chords and rounding. It has to lie between the exact offsets by that much less and
 * that much more, point by point: so the two are nowhere farther apart than the outline's offset moves for it, however
 * flat two curves meet.
 */
export function expectBetween(
  { outer, distanceMm }: OffsetCase,
  points: readonly Point[],
  areaMm2: number,
  strayMm: number,
): void {
  const less = offsetOutwards(outer, distanceMm - strayMm).loop;
  const more = offsetOutwards(outer, distanceMm + strayMm).loop;
  expect(areaMm2).toBeGreaterThan(signedAreaOf(less));
  expect(areaMm2).toBeLessThan(signedAreaOf(more));
  // Every so many of the thousands of points, all round.
  const step = Math.max(1, Math.floor(points.length / 300));
  const looked = points.filter((_, i) => i % step === 0);
  expect(looked.length).toBeGreaterThan(3);
  expect(looked.filter((point) => isInside(less, point))).toEqual([]);
  expect(looked.filter((point) => !isInside(more, point))).toEqual([]);
}
