/**
 * The piece that rounds or cuts one corner. The corner lies between two runs: the end of `before` is the start of
 * `after`. A run is the smooth row of segments of one step, a single one except for spirals.
 */
import type { CornerDesign, Point } from "../language/design.ts";
import type { TextRange } from "../language/text.ts";
import { arcAbout, lineBetween } from "./arc.ts";
import { circleCircle } from "./intersect.ts";
import type { ArcSegment, LineSegment, Segment } from "./segment.ts";
import { arcFractionAt, lengthOf, tangentAt } from "./segment-geometry.ts";
import { SAME_DIRECTION_RAD, SAME_POINT_MM, tieToleranceMm } from "./tolerance.ts";
import { pointAlong } from "./trim.ts";
import {
  angleOf,
  cross,
  direction,
  distance,
  dot,
  FULL_TURN,
  leftOf,
  minus,
  plus,
  times,
  turnBetween,
} from "./vector.ts";

/** What a treated corner takes: so much off the end of the run before it and off the start of the run behind it. */
export interface CornerCut {
  readonly beforeMm: number;
  readonly afterMm: number;
  /** The fillet or the bevel, from the new end of the one to the new start of the other. */
  readonly piece: Segment;
}

/** The angle turned at the corner, positive to the left, −π to π. */
export function cornerTurn(before: readonly Segment[], after: readonly Segment[]): number {
  const last = before.at(-1);
  const first = after[0];
  return last && first ? turnBetween(tangentAt(last, 1), tangentAt(first, 0)) : 0;
}

/** Why there is nothing to treat at a joint, or null where there is a corner. */
export function cornerFault(turnRad: number): "straight" | "doubled-back" | null {
  if (Math.abs(turnRad) < SAME_DIRECTION_RAD) return "straight";
  return Math.PI - Math.abs(turnRad) < SAME_DIRECTION_RAD ? "doubled-back" : null;
}

/** The cut for a corner of this size, or null where the runs are too short or too bent for it. */
export function cornerCut(
  before: readonly Segment[],
  after: readonly Segment[],
  kind: CornerDesign["kind"],
  sizeMm: number,
  source: TextRange,
): CornerCut | null {
  return kind === "round"
    ? filletCut(before, after, sizeMm, source)
    : bevelCut(before, after, sizeMm, source);
}

function bevelCut(
  before: readonly Segment[],
  after: readonly Segment[],
  sizeMm: number,
  source: TextRange,
): CornerCut | null {
  const from = pointAlong(before, runLength(before) - sizeMm);
  const to = pointAlong(after, sizeMm);
  if (from === null || to === null || distance(from, to) <= SAME_POINT_MM) return null;
  return { beforeMm: sizeMm, afterMm: sizeMm, piece: lineBetween(from, to, source) };
}

export function runLength(run: readonly Segment[]): number {
  return run.reduce((sum, segment) => sum + lengthOf(segment), 0);
}

/** A segment of a run with its distance in mm, along the run, between its near end and the corner. */
interface Reached {
  readonly segment: Segment;
  readonly skippedMm: number;
}

function filletCut(
  before: readonly Segment[],
  after: readonly Segment[],
  radiusMm: number,
  source: TextRange,
): CornerCut | null {
  const sign = cornerTurn(before, after) > 0 ? 1 : -1;
  let best: CornerCut | null = null;
  for (const near of fromCorner([...before].reverse())) {
    for (const far of fromCorner(after)) {
      const taken = best === null ? Infinity : best.beforeMm + best.afterMm;
      if (near.skippedMm + far.skippedMm >= taken) break;
      for (const cut of filletsOf(near, far, radiusMm, sign, source)) {
        if (best === null || cut.beforeMm + cut.afterMm < best.beforeMm + best.afterMm) best = cut;
      }
    }
  }
  return best;
}

function fromCorner(run: readonly Segment[]): Reached[] {
  let skippedMm = 0;
  return run.map((segment) => {
    const reached = { segment, skippedMm };
    skippedMm += lengthOf(segment);
    return reached;
  });
}

/**
 * The fillets between two segments: their centres lie as far to the inner side of either as the radius is long, where
 * the two offset curves meet.
 */
function filletsOf(near: Reached, far: Reached, radiusMm: number, sign: 1 | -1, source: TextRange) {
  const cuts: CornerCut[] = [];
  for (const centre of offsetMeetings(near.segment, far.segment, radiusMm, sign)) {
    const leaves = tangentPoint(near.segment, centre);
    const joins = tangentPoint(far.segment, centre);
    const shareLeft = shareOf(near.segment, leaves);
    const shareTaken = shareOf(far.segment, joins);
    if (shareLeft === null || shareTaken === null) continue;
    cuts.push({
      beforeMm: near.skippedMm + (1 - shareLeft) * lengthOf(near.segment),
      afterMm: far.skippedMm + shareTaken * lengthOf(far.segment),
      piece: arcAbout(centre, leaves, joins, sign, source, radiusMm),
    });
  }
  return cuts;
}

function offsetMeetings(a: Segment, b: Segment, radiusMm: number, sign: 1 | -1): readonly Point[] {
  if (a.kind === "line" && b.kind === "line") return lineLineCentres(a, b, radiusMm, sign);
  const radiusA = offsetRadius(a, radiusMm, sign);
  const radiusB = offsetRadius(b, radiusMm, sign);
  if (!(radiusA > 0 && radiusB > 0)) return [];
  if (a.kind === "line") return b.kind === "arc" ? lineArcCentres(a, b, radiusB, radiusMm, sign) : [];
  if (b.kind === "line") return lineArcCentres(b, a, radiusA, radiusMm, sign);
  return circleCircle(a.centre, radiusA, b.centre, radiusB, tieToleranceMm(a, b));
}

/** The radius of an arc moved to the inner side of the corner: smaller where the arc bends the same way. */
function offsetRadius(segment: Segment, byMm: number, sign: 1 | -1): number {
  if (segment.kind === "line") return Infinity;
  return segment.radiusMm - sign * Math.sign(segment.sweepRad) * byMm;
}

function lineLineCentres(a: LineSegment, b: LineSegment, radiusMm: number, sign: 1 | -1): readonly Point[] {
  const alongA = direction(a.from, a.to);
  const alongB = direction(b.from, b.to);
  const sine = cross(alongA, alongB);
  if (sine === 0) return [];
  const startA = plus(a.from, times(leftOf(alongA), sign * radiusMm));
  const startB = plus(b.from, times(leftOf(alongB), sign * radiusMm));
  return [plus(startA, times(alongA, cross(minus(startB, startA), alongB) / sine))];
}

function lineArcCentres(
  line: LineSegment,
  arc: ArcSegment,
  offsetRadiusMm: number,
  radiusMm: number,
  sign: 1 | -1,
): readonly Point[] {
  const along = direction(line.from, line.to);
  const left = leftOf(along);
  // From the moved line to the arc's centre, to the left.
  const offset = dot(minus(arc.centre, line.from), left) - sign * radiusMm;
  if (Math.abs(offset) > offsetRadiusMm) return [];
  const half = Math.sqrt((offsetRadiusMm - offset) * (offsetRadiusMm + offset));
  const foot = minus(arc.centre, times(left, offset));
  return [plus(foot, times(along, -half)), plus(foot, times(along, half))];
}

/** Where a circle about `centre`, tangent to the segment's line or circle, touches it. */
function tangentPoint(segment: Segment, centre: Point): Point {
  if (segment.kind === "arc") {
    return plus(segment.centre, times(direction(segment.centre, centre), segment.radiusMm));
  }
  const along = direction(segment.from, segment.to);
  return plus(segment.from, times(along, dot(minus(centre, segment.from), along)));
}

/** The fraction of a segment at a point of its line or circle; null beyond its ends, which are forgiven rounding. */
function shareOf(segment: Segment, point: Point): number | null {
  const share = segment.kind === "line" ? lineShare(segment, point) : arcShare(segment, point);
  const slack = SAME_POINT_MM / lengthOf(segment);
  return share >= -slack && share <= 1 + slack ? Math.min(1, Math.max(0, share)) : null;
}

function lineShare(line: LineSegment, point: Point): number {
  const along = minus(line.to, line.from);
  return dot(minus(point, line.from), along) / dot(along, along);
}

/** Beside the arc, the share counts from whichever end is nearer, so that just before the start is just below 0. */
function arcShare(arc: ArcSegment, point: Point): number {
  const share = arcFractionAt(arc, angleOf(minus(point, arc.centre)));
  const round = FULL_TURN / Math.abs(arc.sweepRad);
  return share > (1 + round) / 2 ? share - round : share;
}
