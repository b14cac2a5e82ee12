/**
 * Exact geometry of single lines and arcs. Lengths in mm, angles in rad. A fraction runs from 0 at `from` to 1 at
 * `to`, evenly along the segment.
 */
import type { Point } from "../language/design.ts";
import type { ArcSegment, Loop, Segment } from "./segment.ts";
import {
  angleOf,
  between,
  cross,
  direction,
  distance,
  dot,
  leftOf,
  minus,
  norm,
  ORIGIN,
  polar,
  wrapped,
} from "./vector.ts";

/** An axis-parallel box, sides included. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A point of a segment with its fraction and its distance from what was asked about. */
export interface SegmentPoint {
  readonly point: Point;
  readonly fraction: number;
  readonly distanceMm: number;
}

/** Length along the segment. */
export function lengthOf(segment: Segment): number {
  return segment.kind === "line"
    ? distance(segment.from, segment.to)
    : segment.radiusMm * Math.abs(segment.sweepRad);
}

/** The point at a fraction; the ends are exactly `from` and `to`. */
export function pointAt(segment: Segment, fraction: number): Point {
  if (fraction === 0) return segment.from;
  if (fraction === 1) return segment.to;
  if (segment.kind === "line") return between(segment.from, segment.to, fraction);
  return polar(segment.centre, segment.radiusMm, segment.startRad + fraction * segment.sweepRad);
}

/** The unit vector along the direction of travel. */
export function tangentAt(segment: Segment, fraction: number): Point {
  if (segment.kind === "line") return direction(segment.from, segment.to);
  const angle = segment.startRad + fraction * segment.sweepRad + (Math.PI / 2) * Math.sign(segment.sweepRad);
  return { x: Math.cos(angle), y: Math.sin(angle) };
}

/**
 * The unit vector a quarter turn left of the direction of travel. It points into the metal on every loop of an
 * outline, since the outer loop runs counter-clockwise and the inner ones clockwise.
 */
export function normalAt(segment: Segment, fraction: number): Point {
  return leftOf(tangentAt(segment, fraction));
}

/**
 * Where a direction from the centre lies on an arc: the angle travelled from the start, over the whole sweep.
 * Between 0 and 1 it is the arc's fraction; above 1 the direction is beside the arc.
 */
export function arcFractionAt(arc: ArcSegment, angleRad: number): number {
  return wrapped((angleRad - arc.startRad) * Math.sign(arc.sweepRad)) / Math.abs(arc.sweepRad);
}

/** The point of the segment nearest to a point. On a tie (the centre of an arc) `from` is taken. */
export function nearestOn(segment: Segment, point: Point): SegmentPoint {
  const fraction = nearestFraction(segment, point);
  const nearest = pointAt(segment, fraction);
  return { point: nearest, fraction, distanceMm: distance(nearest, point) };
}

function nearestFraction(segment: Segment, point: Point): number {
  if (segment.kind === "line") {
    const along = minus(segment.to, segment.from);
    const share = dot(minus(point, segment.from), along) / dot(along, along);
    return Number.isFinite(share) ? Math.min(1, Math.max(0, share)) : 0;
  }
  const outward = minus(point, segment.centre);
  if (norm(outward) === 0) return 0;
  const fraction = arcFractionAt(segment, angleOf(outward));
  if (fraction <= 1) return fraction;
  return distance(point, segment.from) <= distance(point, segment.to) ? 0 : 1;
}

/** Distance in mm from a point to the nearest point of the segment. */
export function distanceToSegment(segment: Segment, point: Point): number {
  return nearestOn(segment, point).distanceMm;
}

/** The point of the segment farthest from the spin axis; `distanceMm` is its radius. Ties go to the earlier point. */
export function farthestFromAxis(segment: Segment): SegmentPoint {
  const ends = [0, 1].map((fraction) => fromAxis(segment, fraction));
  return [...ends, ...beyondCentre(segment)].reduce((a, b) => (b.distanceMm > a.distanceMm ? b : a));
}

function fromAxis(segment: Segment, fraction: number): SegmentPoint {
  const point = pointAt(segment, fraction);
  return { point, fraction, distanceMm: norm(point) };
}

/** The arc's point on the ray from the axis through its centre and beyond it, where it has one. */
function beyondCentre(segment: Segment): SegmentPoint[] {
  if (segment.kind === "line" || norm(segment.centre) === 0) return [];
  const fraction = arcFractionAt(segment, angleOf(segment.centre));
  return fraction <= 1 ? [fromAxis(segment, fraction)] : [];
}

/** The exact box around a segment, an arc's outermost points included. */
export function boundsOf(segment: Segment): Bounds {
  const { from, to } = segment;
  const ends = {
    minX: Math.min(from.x, to.x),
    minY: Math.min(from.y, to.y),
    maxX: Math.max(from.x, to.x),
    maxY: Math.max(from.y, to.y),
  };
  return segment.kind === "line" ? ends : arcBounds(segment, ends);
}

function arcBounds(arc: ArcSegment, ends: Bounds): Bounds {
  const { centre, radiusMm } = arc;
  const passes = (quarters: number): boolean => arcFractionAt(arc, (quarters * Math.PI) / 2) <= 1;
  return {
    minX: passes(2) ? Math.min(ends.minX, centre.x - radiusMm) : ends.minX,
    minY: passes(3) ? Math.min(ends.minY, centre.y - radiusMm) : ends.minY,
    maxX: passes(0) ? Math.max(ends.maxX, centre.x + radiusMm) : ends.maxX,
    maxY: passes(1) ? Math.max(ends.maxY, centre.y + radiusMm) : ends.maxY,
  };
}

/** The exact box around a loop. A loop without segments has no bounds: infinite, and inside out. */
export function boundsOfLoop(loop: Loop): Bounds {
  return loop.segments.map(boundsOf).reduce(unitedBounds, NO_BOUNDS);
}

const NO_BOUNDS: Bounds = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** The smallest box around two boxes. */
export function unitedBounds(a: Bounds, b: Bounds): Bounds {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/**
 * The area inside a loop in mm², exact for arcs: positive for a counter-clockwise loop, negative for a clockwise one.
 * Green's theorem, ½∮(x dy − y dx), about the loop's first point to keep the digits of a loop far from the axis.
 */
export function signedAreaOf(loop: Loop): number {
  const origin = loop.segments[0]?.from ?? ORIGIN;
  return loop.segments.reduce((sum, segment) => sum + sectorArea(segment, origin), 0);
}

function sectorArea(segment: Segment, origin: Point): number {
  const from = minus(segment.from, origin);
  const to = minus(segment.to, origin);
  if (segment.kind === "line") return cross(from, to) / 2;
  const centre = minus(segment.centre, origin);
  return (segment.radiusMm ** 2 * segment.sweepRad + cross(centre, minus(to, from))) / 2;
}

/** Length around a loop in mm. */
export function perimeterOf(loop: Loop): number {
  return loop.segments.reduce((sum, segment) => sum + lengthOf(segment), 0);
}
