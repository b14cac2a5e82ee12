import type { Point } from "../language/design.ts";
import type { ArcSegment, Loop, Segment } from "./segment.ts";
import { pointAt } from "./segment-geometry.ts";

/**
 * A loop as the corners of a polygon, first corner not repeated, all of them on the loop: for drawings and for
 * independent checks, never for figures or the cut file. No point of an arc lies farther than `toleranceMm` from its
 * chord. Throws a RangeError for a tolerance that is not a positive number.
 */
export function flatten(loop: Loop, toleranceMm: number): Point[] {
  return loop.segments.flatMap((segment) => flattenSegment(segment, toleranceMm));
}

/** The corners of one segment, `from` included and `to` left to the next segment. */
export function flattenSegment(segment: Segment, toleranceMm: number): Point[] {
  if (!(toleranceMm > 0)) throw new RangeError(`flatten needs a positive tolerance, not ${toleranceMm}`);
  if (segment.kind === "line") return [segment.from];
  const pieces = chordCount(segment, toleranceMm);
  return Array.from({ length: pieces }, (_, i) => pointAt(segment, i / pieces));
}

/** A chord over the angle δ stands r(1 − cos δ/2) = 2r·sin²(δ/4) off its arc; at most a quarter turn a chord. */
function chordCount(arc: ArcSegment, toleranceMm: number): number {
  const sine = Math.sqrt(toleranceMm / (2 * arc.radiusMm));
  const widest = Math.min(Math.PI / 2, 4 * Math.asin(Math.min(1, sine)));
  return Math.max(1, Math.ceil(Math.abs(arc.sweepRad) / widest));
}
