import { expect } from "vitest";
import type { Loop, Segment } from "../../geometry/outline/segment.ts";
import { lengthOf, tangentAt } from "../../geometry/outline/segment-geometry.ts";
import { distance, turnBetween } from "../../geometry/outline/vector.ts";

/** The angle by which a loop turns where a segment ends and the next one starts. */
export function turnAfter(loop: Loop, index: number): number {
  const [segment, next] = [loop.segments[index], loop.segments[(index + 1) % loop.segments.length]];
  if (segment === undefined || next === undefined) throw new Error(`no segment ${index}`);
  return turnBetween(tangentAt(segment, 1), tangentAt(next, 0));
}

/** Expect a loop without gap or sliver, its arcs true to their centres. */
export function expectSound(loop: Loop): void {
  for (const [i, segment] of loop.segments.entries()) {
    expect(segment.from).toEqual(loop.segments.at(i - 1)?.to);
    expect(lengthOf(segment)).toBeGreaterThan(1e-6);
    expectTrueArc(segment);
  }
}

export function expectTrueArc(segment: Segment): void {
  if (segment.kind === "line") return;
  const { from, to, centre, radiusMm, startRad, sweepRad } = segment;
  const slack = 1e-9 * Math.max(100, radiusMm);
  for (const [end, angle] of [
    [from, startRad],
    [to, startRad + sweepRad],
  ] as const) {
    const expected = { x: centre.x + radiusMm * Math.cos(angle), y: centre.y + radiusMm * Math.sin(angle) };
    expect(distance(end, expected)).toBeLessThan(slack);
  }
}

/** The direction in which the loop turns over all, which is a full turn for any loop that does not cross itself. */
export function totalTurn(loop: Loop): number {
  const bends = loop.segments.reduce(
    (sum, segment) => sum + (segment.kind === "arc" ? segment.sweepRad : 0),
    0,
  );
  return loop.segments.reduce((sum, _, i) => sum + turnAfter(loop, i), bends);
}
