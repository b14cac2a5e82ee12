import type { InnerLoop, Loop, Outline, Segment } from "../segment.ts";
import { type Bounds, boundsOf } from "../segment-geometry.ts";

/** A loop with its number, 0 for the outer one, and what a builder calls it. */
export interface NamedLoop {
  readonly number: number;
  readonly name: "outline" | InnerLoop["kind"];
  readonly loop: Loop;
}

export function namedLoops({ outer, inner }: Outline): NamedLoop[] {
  const holes = inner.map((loop, i): NamedLoop => ({ number: i + 1, name: loop.kind, loop }));
  return [{ number: 0, name: "outline", loop: outer }, ...holes];
}

/** A segment with its loop, its place in it, and its box. */
export interface PlacedSegment {
  readonly segment: Segment;
  readonly of: NamedLoop;
  readonly index: number;
  readonly box: Bounds;
}

export function placeSegments(loops: readonly NamedLoop[]): PlacedSegment[] {
  return loops.flatMap((of) =>
    of.loop.segments.map((segment, index) => ({ segment, of, index, box: boundsOf(segment) })),
  );
}
