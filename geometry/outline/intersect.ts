/**
 * Where two segments meet, exactly, for lines and arcs alike.
 *
 * Tie rules. An end that is nearer than the tolerance to the other segment touches it. A line or circle that comes
 * within the tolerance of tangency touches at one point, at the foot of the perpendicular. Two segments that run along
 * each other meet in the ends of their common stretch. Points of one meeting, such as a touching end and the crossing
 * right beside it, are given once.
 */
import type { Point } from "../language/design.ts";
import type { ArcSegment, LineSegment, Segment } from "./segment.ts";
import { arcFractionAt, distanceToSegment } from "./segment-geometry.ts";
import { reachOf, tieToleranceMm } from "./tolerance.ts";
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
  plus,
  times,
} from "./vector.ts";

/** The points where two segments meet, in no certain order; empty where they stay apart. */
export function intersections(
  a: Segment,
  b: Segment,
  toleranceMm: number = tieToleranceMm(a, b),
): readonly Point[] {
  const touching = [
    ...[a.from, a.to].filter((end) => distanceToSegment(b, end) <= toleranceMm),
    ...[b.from, b.to].filter((end) => distanceToSegment(a, end) <= toleranceMm),
  ];
  // Where a segment touches at a shallow angle, its crossing point may lie this far beside the touching end.
  const mergeMm = Math.sqrt(2 * toleranceMm * Math.max(reachOf(a), reachOf(b)));
  return distinct([...touching, ...crossings(a, b, toleranceMm)], mergeMm);
}

function distinct(points: readonly Point[], mergeMm: number): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    if (!kept.some((other) => distance(point, other) <= mergeMm)) kept.push(point);
  }
  return kept;
}

/** Points inside both segments; touching ends may be missed, they are looked at on their own. */
export function crossings(a: Segment, b: Segment, toleranceMm: number): readonly Point[] {
  if (a.kind === "line") return b.kind === "line" ? lineLine(a, b) : lineArc(a, b, toleranceMm);
  return b.kind === "line" ? lineArc(b, a, toleranceMm) : arcArc(a, b, toleranceMm);
}

function lineLine(a: LineSegment, b: LineSegment): readonly Point[] {
  const along = minus(a.to, a.from);
  const other = minus(b.to, b.from);
  const gap = minus(b.from, a.from);
  const sine = cross(along, other);
  const shareA = cross(gap, other) / sine;
  const shareB = cross(gap, along) / sine;
  // Parallel lines divide by zero; the shares are then not finite and lie outside.
  return isShare(shareA) && isShare(shareB) ? [between(a.from, a.to, shareA)] : [];
}

const isShare = (share: number): boolean => share >= 0 && share <= 1;

function lineArc(line: LineSegment, arc: ArcSegment, toleranceMm: number): readonly Point[] {
  const along = direction(line.from, line.to);
  const toCentre = minus(arc.centre, line.from);
  const offset = cross(along, toCentre);
  const foot = minus(arc.centre, times(leftOf(along), offset));
  const reach = halfChord(arc.radiusMm, Math.abs(offset), toleranceMm);
  const alongFoot = dot(toCentre, along);
  const length = distance(line.from, line.to);
  return reach
    .filter((step) => alongFoot + step >= 0 && alongFoot + step <= length)
    .map((step) => plus(foot, times(along, step)))
    .filter((point) => isOnSweep(arc, point));
}

/** The ways along a line from its foot under the centre to the circle: two, one where it touches, or none. */
function halfChord(radius: number, offset: number, toleranceMm: number): readonly number[] {
  if (Math.abs(radius - offset) <= toleranceMm) return [0];
  if (offset > radius) return [];
  const half = Math.sqrt((radius - offset) * (radius + offset));
  return [-half, half];
}

function arcArc(a: ArcSegment, b: ArcSegment, toleranceMm: number): readonly Point[] {
  return circleCircle(a.centre, a.radiusMm, b.centre, b.radiusMm, toleranceMm).filter(
    (point) => isOnSweep(a, point) && isOnSweep(b, point),
  );
}

/** Where two circles meet: two points, one where they touch, none where they are apart, nested or the same circle. */
export function circleCircle(
  centreA: Point,
  radiusA: number,
  centreB: Point,
  radiusB: number,
  toleranceMm: number,
): readonly Point[] {
  const apart = minus(centreB, centreA);
  const gap = norm(apart);
  if (gap <= toleranceMm) return [];
  const outer = gap - (radiusA + radiusB);
  const inner = gap - Math.abs(radiusA - radiusB);
  if (outer > toleranceMm || inner < -toleranceMm) return [];
  const towards = times(apart, 1 / gap);
  // Half the gap plus a difference of squares, factored to keep the digits of nearly equal circles.
  const along = gap / 2 + ((radiusA - radiusB) * (radiusA + radiusB)) / (2 * gap);
  if (outer >= -toleranceMm || inner <= toleranceMm) {
    return [plus(centreA, times(towards, radiusA * Math.sign(along)))];
  }
  const foot = plus(centreA, times(towards, along));
  const half = Math.sqrt(-outer * (gap + radiusA + radiusB) * inner * (gap + Math.abs(radiusA - radiusB)));
  const sideways = times(leftOf(towards), half / (2 * gap));
  return [minus(foot, sideways), plus(foot, sideways)];
}

function isOnSweep(arc: ArcSegment, point: Point): boolean {
  return arcFractionAt(arc, angleOf(minus(point, arc.centre))) <= 1;
}
