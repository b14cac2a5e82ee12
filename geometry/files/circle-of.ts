import type { ArcSegment, Loop } from "../outline/segment.ts";
import { distance, FULL_TURN } from "../outline/vector.ts";

/**
 * Points closer than this are one point in a cut file. It is the resolution that the files keep, so a shorter piece
 * would be read as one of no length; leaving it out moves its neighbours by less than the resolution.
 */
export const COINCIDENT_MM = 1e-9;

/** An arc of the circle that the loop is, if it is one: arcs about one centre, one full turn in all. */
export function circleOf({ segments }: Loop): ArcSegment | null {
  const [first] = segments;
  if (first?.kind !== "arc") return null;
  let turnRad = 0;
  for (const segment of segments) {
    if (segment.kind !== "arc" || !onSameCircle(segment, first)) return null;
    turnRad += segment.sweepRad;
  }
  const gapMm = Math.abs(Math.abs(turnRad) - FULL_TURN) * first.radiusMm;
  return gapMm < COINCIDENT_MM ? first : null;
}

function onSameCircle(a: ArcSegment, b: ArcSegment): boolean {
  return distance(a.centre, b.centre) < COINCIDENT_MM && Math.abs(a.radiusMm - b.radiusMm) < COINCIDENT_MM;
}
