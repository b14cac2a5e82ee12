import type { Point } from "../language/design.ts";
import type { ArcSegment, Loop } from "./segment.ts";

/** What a loop is drawn into: an SVG path, a canvas, a DXF polyline, a recorder in a test. */
export interface PathSink {
  /** Called once, first. */
  moveTo(point: Point): void;
  lineTo(point: Point): void;
  /** The arc starts at the last point. It may be a full turn, with `from` equal to `to`. */
  arcTo(arc: ArcSegment): void;
  /** Called once, last. Draws the straight piece to the first point where the loop ends with a line. */
  close(): void;
}

/**
 * Draws a loop into a sink. A last line is left to `close`, so that no point comes twice; after a last arc the loop is
 * back at its first point already. A loop without segments draws nothing.
 */
export function drawLoop(loop: Loop, sink: PathSink): void {
  const first = loop.segments[0];
  if (first === undefined) return;
  sink.moveTo(first.from);
  for (const [i, segment] of loop.segments.entries()) {
    if (segment.kind === "arc") sink.arcTo(segment);
    else if (i < loop.segments.length - 1) sink.lineTo(segment.to);
  }
  sink.close();
}
