import { segmentPath } from "../../../webview/page/path-data.ts";
import type { DrawnLoop, DrawnSegment, PlanePoint } from "../../protocol.ts";

/** Two ends closer than this are one corner; loops are joined far more exactly, corners lie far wider apart. */
const SAME_POINT_MM = 1e-4;

/**
 * The edges that hang on a point, as they would run if it stood elsewhere: a hint while dragging, the text decides.
 * Lines follow their end, arcs keep their angle, a loop about the point moves as a whole, a rounded or bevelled corner
 * is shown sharp.
 */
export function touchedPath(loops: readonly DrawnLoop[], from: PlanePoint, to: PlanePoint): string {
  const edges = loops.flatMap((loop) => touchedEdges(loop, from, to));
  const corners = edges.length > 0 ? edges : loops.flatMap((loop) => treatedCorner(loop, from, to));
  return corners.map(segmentPath).join("");
}

function touchedEdges({ segments }: DrawnLoop, from: PlanePoint, to: PlanePoint): DrawnSegment[] {
  const around = segments.every(
    (segment) =>
      segment.kind === "arc" && Math.abs(segment.sweepRad) > Math.PI * 1.999 && same(segment.centre, from),
  );
  if (around) return segments.map((segment) => shifted(segment, { x: to.x - from.x, y: to.y - from.y }));
  return segments
    .filter((segment) => same(segment.from, from) || same(segment.to, from))
    .map((segment) => {
      const start = same(segment.from, from) ? to : segment.from;
      const end = same(segment.to, from) ? to : segment.to;
      return rejoined(segment, start, end);
    });
}

/** The two lines that would meet in the point if the corner between them were not cut or rounded. */
function treatedCorner({ segments }: DrawnLoop, from: PlanePoint, to: PlanePoint): DrawnSegment[] {
  for (const [index, corner] of segments.entries()) {
    const before = segments[(index + segments.length - 1) % segments.length];
    const after = segments[(index + 1) % segments.length];
    if (before?.kind !== "line" || after?.kind !== "line") continue;
    // The point lies ahead of the one line and behind the other, close to what stands in its place.
    const near = distance(corner.from, from) + distance(corner.to, from);
    if (near > 4 * distance(corner.from, corner.to)) continue;
    if (isInLine(before, from) && isInLine(after, from))
      return [
        { ...before, to },
        { ...after, from: to },
      ];
  }
  return [];
}

function shifted(segment: DrawnSegment, by: PlanePoint): DrawnSegment {
  const move = (point: PlanePoint) => ({ x: point.x + by.x, y: point.y + by.y });
  const ends = { from: move(segment.from), to: move(segment.to) };
  return segment.kind === "line"
    ? { ...segment, ...ends }
    : { ...segment, ...ends, centre: move(segment.centre) };
}

/** An arc between other ends with the same angle: radius = chord / (2·sin(sweep/2)). */
function rejoined(segment: DrawnSegment, from: PlanePoint, to: PlanePoint): DrawnSegment {
  if (segment.kind === "line") return { ...segment, from, to };
  const radiusMm = distance(from, to) / (2 * Math.abs(Math.sin(segment.sweepRad / 2)));
  return { ...segment, from, to, radiusMm: Math.max(radiusMm, 1e-6) };
}

/** Whether a point lies on the endless line through a segment. */
function isInLine({ from, to }: DrawnSegment, point: PlanePoint): boolean {
  const length = distance(from, to);
  const off = (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
  return length > 0 && Math.abs(off) / length <= SAME_POINT_MM;
}

function same(a: PlanePoint, b: PlanePoint): boolean {
  return distance(a, b) <= SAME_POINT_MM;
}

function distance(a: PlanePoint, b: PlanePoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
