/** Tests in a few products whether two things are far from each other, for the many near pairs that are. */
import type { Point } from "../../language/design.ts";
import type { ArcSegment, LineSegment, Segment } from "../segment.ts";
import { distanceToSegment } from "../segment-geometry.ts";

/**
 * Whether two segments are surely farther apart than the tolerance: one line has the other segment wholly on one
 * side, or their circles do not come near each other. False says nothing.
 */
export function surelyApart(a: Segment, b: Segment, toleranceMm: number): boolean {
  if (a.kind === "line") {
    if (isBesides(a, b, toleranceMm)) return true;
    return b.kind === "line" && isBesides(b, a, toleranceMm);
  }
  return b.kind === "line" ? isBesides(b, a, toleranceMm) : circlesApart(a, b, toleranceMm);
}

function isBesides(line: LineSegment, other: Segment, toleranceMm: number): boolean {
  const [dx, dy] = [line.to.x - line.from.x, line.to.y - line.from.y];
  const sideOf = ({ x, y }: Point): number => dx * (y - line.from.y) - dy * (x - line.from.x);
  const length = Math.sqrt(dx * dx + dy * dy);
  if (other.kind === "arc") return Math.abs(sideOf(other.centre)) > length * (other.radiusMm + toleranceMm);
  const [from, to] = [sideOf(other.from), sideOf(other.to)];
  const touching = length * toleranceMm;
  return (from > touching && to > touching) || (from < -touching && to < -touching);
}

function circlesApart(a: ArcSegment, b: ArcSegment, toleranceMm: number): boolean {
  const gap = Math.hypot(b.centre.x - a.centre.x, b.centre.y - a.centre.y);
  return gap > a.radiusMm + b.radiusMm + toleranceMm || gap < Math.abs(a.radiusMm - b.radiusMm) - toleranceMm;
}

/** Whether a point is nearer to a segment than a distance; most lines and circles as a whole are not. */
export function isNearer(segment: Segment, point: Point, distanceMm: number): boolean {
  if (segment.kind === "line") return lineIsNearer(segment, point, distanceMm);
  const outMm = Math.hypot(point.x - segment.centre.x, point.y - segment.centre.y) - segment.radiusMm;
  return Math.abs(outMm) < distanceMm && distanceToSegment(segment, point) < distanceMm;
}

function lineIsNearer({ from, to }: LineSegment, point: Point, distanceMm: number): boolean {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const [px, py] = [point.x - from.x, point.y - from.y];
  const share = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
  return Math.hypot(px - share * dx, py - share * dy) < distanceMm;
}
