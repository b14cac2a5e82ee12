import type { Point } from "../../language/design.ts";
import type { Loop, Segment } from "../../outline/segment.ts";
import { arcFractionAt, lengthOf, normalAt } from "../../outline/segment-geometry.ts";
import { angleOf, dot, ORIGIN, plus, times } from "../../outline/vector.ts";
import { momentOfEdge } from "./edge-moments.ts";

/** A stretch of a loop that a cut leaves too far out or in as a whole. */
export interface Edge {
  readonly lengthMm: number;
  /** ∫p ds, mm². */
  readonly momentMm2: Point;
  /** The dimension that the edge bounds: across the loop, square to the edge's middle. */
  readonly acrossMm: number;
}

/**
 * The edges of a loop: its segments, taken together in their order until each edge is at least `leastMm` long, what is
 * left over with the last. A cut strays slowly: many short segments that draw one curve do not stray each for itself.
 */
export function edgesOf(loop: Loop, leastMm: number): readonly Edge[] {
  const runs: Segment[][] = [];
  for (const segment of loop.segments) {
    const run = runs.at(-1);
    if (run !== undefined && runLength(run) < leastMm) run.push(segment);
    else runs.push([segment]);
  }
  const last = runs.at(-1);
  const beforeLast = runs.at(-2);
  if (last && beforeLast && runLength(last) < leastMm) beforeLast.push(...(runs.pop() ?? []));
  return runs.map((run) => edgeOf(run, loop));
}

function runLength(run: readonly Segment[]): number {
  return run.reduce((sum, segment) => sum + lengthOf(segment), 0);
}

function edgeOf(run: readonly Segment[], loop: Loop): Edge {
  const longest = run.reduce((a, b) => (lengthOf(b) > lengthOf(a) ? b : a));
  return {
    lengthMm: runLength(run),
    momentMm2: run.reduce((sum, segment) => plus(sum, momentOfEdge(segment)), ORIGIN),
    acrossMm: widthOf(loop, normalAt(longest, 0.5)),
  };
}

/** How wide a loop is in a direction, exactly. */
export function widthOf(loop: Loop, direction: Point): number {
  return farthestAlong(loop, direction) + farthestAlong(loop, times(direction, -1));
}

function farthestAlong(loop: Loop, direction: Point): number {
  return loop.segments.reduce((most, segment) => {
    const end = Math.max(most, dot(segment.from, direction));
    if (segment.kind === "line" || arcFractionAt(segment, angleOf(direction)) > 1) return end;
    return Math.max(end, dot(segment.centre, direction) + segment.radiusMm);
  }, Number.NEGATIVE_INFINITY);
}
