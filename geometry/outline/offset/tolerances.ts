import type { Loop } from "../segment.ts";
import { boundsOfLoop } from "../segment-geometry.ts";
import { reachOf } from "../tolerance.ts";

/** What counts as equal while an outline is offset, in mm. Each is a multiple of the rounding, so none is a length. */
export interface OffsetTolerances {
  /** A curve's end this near to another curve touches it. */
  readonly touchMm: number;
  /** Points this near to each other are one point; wider than a touch, so that both ends of a touch become one. */
  readonly sameMm: number;
  /** A curve this much too near to the outline still counts as clear of it: more than all the rest adds up to. */
  readonly clearMm: number;
}

/** Rounding of a few operations on coordinates, as a share of the largest one. */
const COORDINATE_SHARE = 1e-12;

/** Rounding of a point reckoned from a far centre, as a share of the radius: flat arcs have radii of many metres. */
const RADIUS_SHARE = 2e-15;

export function offsetTolerances(outer: Loop, distanceMm: number): OffsetTolerances {
  const { minX, minY, maxX, maxY } = boundsOfLoop(outer);
  const farMm = Math.max(-minX, -minY, maxX, maxY) + distanceMm;
  const reachMm = outer.segments.reduce((most, segment) => Math.max(most, reachOf(segment)), 0) + distanceMm;
  const touchMm = Math.max(COORDINATE_SHARE * farMm, RADIUS_SHARE * reachMm);
  return { touchMm, sameMm: 10 * touchMm, clearMm: 50 * touchMm };
}
