/**
 * The tolerances of the outline, each with its reason. None can be set.
 */
import type { Segment } from "./segment.ts";

/**
 * Two points nearer than this are one point. A nanometre is a thousand times finer than any cut, and a thousand
 * times coarser than the rounding of a file's arithmetic on bars of metres.
 */
export const SAME_POINT_MM = 1e-6;

/** Directions nearer than this are one direction: over a metre they part by a micrometre. */
export const SAME_DIRECTION_RAD = 1e-6;

/** How far a radius may fall short of half the chord and still mean a half circle, as a share of it: rounding only. */
export const HALF_CIRCLE_SHARE = 1e-9;

/** Rounding of a few operations on coordinates, as a share of the largest one. */
const ROUNDING_SHARE = 1e-12;

/** The distance within which two segments count as touching: rounding, scaled to their coordinates and radii. */
export function tieToleranceMm(a: Segment, b: Segment): number {
  return ROUNDING_SHARE * Math.max(reachOf(a), reachOf(b));
}

/** The size of the largest number that describes a segment. */
export function reachOf(segment: Segment): number {
  const { from, to } = segment;
  const ends = Math.max(Math.abs(from.x), Math.abs(from.y), Math.abs(to.x), Math.abs(to.y));
  if (segment.kind === "line") return ends;
  return Math.max(ends, segment.radiusMm, Math.abs(segment.centre.x), Math.abs(segment.centre.y));
}
