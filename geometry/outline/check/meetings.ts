/** Where the segments of an outline meet that should not. */
import type { Point } from "../../language/design.ts";
import { intersections } from "../intersect.ts";
import type { ArcSegment, LineSegment, Segment } from "../segment.ts";
import { arcFractionAt, distanceToSegment, pointAt } from "../segment-geometry.ts";
import { SAME_POINT_MM } from "../tolerance.ts";
import { angleOf, direction, distance, dot, leftOf, minus, plus, times } from "../vector.ts";
import { forNearPairs } from "./near-pairs.ts";
import type { PlacedSegment } from "./placed-segments.ts";

/** Two segments that meet, beyond the joint that neighbours share. */
export interface Meeting {
  readonly a: PlacedSegment;
  readonly b: PlacedSegment;
  readonly points: readonly Point[];
}

/** All meetings of segments of one loop or of several, touching included. */
export function meetingsOf(segments: readonly PlacedSegment[]): Meeting[] {
  const meetings: Meeting[] = [];
  forNearPairs(segments, SAME_POINT_MM, (a, b) => {
    const points = meetingPoints(a, b);
    if (points.length > 0) meetings.push({ a, b, points });
  });
  return meetings;
}

/** `a` stands before `b`. */
function meetingPoints(a: PlacedSegment, b: PlacedSegment): readonly Point[] {
  if (a.of === b.of) {
    if (b.index === a.index + 1) return neighbourMeetings(a.segment, b.segment);
    const last = a.of.loop.segments.length - 1;
    if (a.index === 0 && b.index === last) return neighbourMeetings(b.segment, a.segment);
  }
  if (standApart(a.segment, b.segment) || standApart(b.segment, a.segment)) return [];
  return intersections(a.segment, b.segment, SAME_POINT_MM);
}

/**
 * Whether a line has another wholly on one side, farther off than what counts as touching. Most near pairs of a finely
 * toothed wheel are such; two products settle them.
 */
function standApart(a: Segment, b: Segment): boolean {
  if (a.kind !== "line" || b.kind !== "line") return false;
  const [dx, dy] = [a.to.x - a.from.x, a.to.y - a.from.y];
  const fromSide = dx * (b.from.y - a.from.y) - dy * (b.from.x - a.from.x);
  const toSide = dx * (b.to.y - a.from.y) - dy * (b.to.x - a.from.x);
  const touching = SAME_POINT_MM * (Math.abs(dx) + Math.abs(dy));
  return (fromSide > touching && toSide > touching) || (fromSide < -touching && toSide < -touching);
}

/**
 * Where a segment and the next one meet besides their joint. Two lines or circles that share one point meet in at
 * most one more, its reflection; that is exact even where they are all but tangent, as around a fillet. What runs
 * back along itself is found by its ends, or by its middle where the two share both ends.
 */
function neighbourMeetings(a: Segment, b: Segment): readonly Point[] {
  if (goesOn(a, b)) return [];
  const joint = a.to;
  const isJoint = (point: Point): boolean =>
    distance(point, joint) <= SAME_POINT_MM ||
    (distance(point, a.from) <= SAME_POINT_MM && distance(point, b.to) <= SAME_POINT_MM);
  const ends = [
    ...[a.from, pointAt(a, 0.5)].filter((point) => distanceToSegment(b, point) <= SAME_POINT_MM),
    ...[b.to].filter((end) => distanceToSegment(a, end) <= SAME_POINT_MM),
  ];
  const other = otherMeeting(a, b, joint);
  const crossing = other !== null && isWithin(a, other) && isWithin(b, other) ? [other] : [];
  return [...ends, ...crossing].filter((point) => !isJoint(point));
}

/** Two lines that turn by less than a quarter: they part for good, and most neighbours are of this kind. */
function goesOn(a: Segment, b: Segment): boolean {
  return a.kind === "line" && b.kind === "line" && dot(minus(a.to, a.from), minus(b.to, b.from)) > 0;
}

/** The second common point of the lines or circles of two segments that share `joint`. */
function otherMeeting(a: Segment, b: Segment, joint: Point): Point | null {
  if (a.kind === "line") return b.kind === "line" ? null : secondOnLine(a, b, joint);
  if (b.kind === "line") return secondOnLine(b, a, joint);
  if (distance(a.centre, b.centre) <= SAME_POINT_MM) return null;
  const offCentres = leftOf(direction(a.centre, b.centre));
  return minus(joint, times(offCentres, 2 * dot(minus(joint, a.centre), offCentres)));
}

/** The joint reflected to the other side of the foot under the arc's centre. */
function secondOnLine(line: LineSegment, arc: ArcSegment, joint: Point): Point {
  const along = direction(line.from, line.to);
  return plus(joint, times(along, 2 * dot(minus(arc.centre, joint), along)));
}

/** Whether a point of the segment's line or circle lies between the segment's ends. */
function isWithin(segment: Segment, point: Point): boolean {
  if (segment.kind === "arc") return arcFractionAt(segment, angleOf(minus(point, segment.centre))) <= 1;
  const along = minus(segment.to, segment.from);
  const share = dot(minus(point, segment.from), along) / dot(along, along);
  return share >= 0 && share <= 1;
}
