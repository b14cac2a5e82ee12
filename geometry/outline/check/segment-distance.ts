import type { Point } from "../../language/design.ts";
import type { ArcSegment, LineSegment, Segment } from "../segment.ts";
import { arcFractionAt, nearestOn } from "../segment-geometry.ts";
import { angleOf, between, direction, distance, dot, minus, plus, times } from "../vector.ts";

/** The shortest way between two segments. */
export interface Gap {
  readonly distanceMm: number;
  readonly from: Point;
  readonly to: Point;
}

/**
 * The shortest way between two segments that do not meet, exact. It leaves an end of one of them, or it stands
 * square on both: between a line and an arc and between two arcs that is only possible through the centres.
 */
export function gapBetween(a: Segment, b: Segment): Gap {
  const ways = [
    ...[a.from, a.to].map((end): Gap => wayTo(b, end)),
    ...[b.from, b.to].map((end): Gap => reversedWay(wayTo(a, end))),
    ...squareWays(a, b),
  ];
  return ways.reduce((least, way) => (way.distanceMm < least.distanceMm ? way : least));
}

function wayTo(segment: Segment, point: Point): Gap {
  const nearest = nearestOn(segment, point);
  return { distanceMm: nearest.distanceMm, from: point, to: nearest.point };
}

const reversedWay = ({ distanceMm, from, to }: Gap): Gap => ({ distanceMm, from: to, to: from });

function squareWays(a: Segment, b: Segment): Gap[] {
  if (a.kind === "arc" && b.kind === "arc") return arcArcWays(a, b);
  if (a.kind === "arc") return b.kind === "line" ? lineArcWays(b, a).map(reversedWay) : [];
  return b.kind === "arc" ? lineArcWays(a, b) : [];
}

function lineArcWays(line: LineSegment, arc: ArcSegment): Gap[] {
  const along = minus(line.to, line.from);
  const share = dot(minus(arc.centre, line.from), along) / dot(along, along);
  if (!(share >= 0 && share <= 1)) return [];
  const foot = between(line.from, line.to, share);
  return pointsTowards(arc, foot).map((to) => ({ distanceMm: distance(foot, to), from: foot, to }));
}

function arcArcWays(a: ArcSegment, b: ArcSegment): Gap[] {
  return pointsTowards(a, b.centre).flatMap((from) =>
    pointsTowards(b, a.centre).map((to) => ({ distanceMm: distance(from, to), from, to })),
  );
}

/**
 * The points of an arc on the straight line through its centre and another point: two, one or none. Where that point is
 * the centre, every line is; the ways from the ends are then as short as any.
 */
function pointsTowards(arc: ArcSegment, point: Point): Point[] {
  if (distance(arc.centre, point) === 0) return [];
  const towards = direction(arc.centre, point);
  return [towards, times(towards, -1)]
    .filter((outward) => arcFractionAt(arc, angleOf(outward)) <= 1)
    .map((outward) => plus(arc.centre, times(outward, arc.radiusMm)));
}
