import type { DrawnLoop, DrawnSegment, PlanePoint } from "../../protocol.ts";
import { segmentPath } from "./path-data.ts";

/** Two ends closer than this are one corner; loops are joined far more exactly, corners lie far wider apart. */
const SAME_POINT_MM = 1e-4;

/**
 * The edges that hang on a point, as they would run if it stood elsewhere: a hint while dragging, the text decides.
 * Lines follow their end, arcs keep their angle, a loop about the point moves as a whole.
 */
export function touchedPath(loops: readonly DrawnLoop[], from: PlanePoint, to: PlanePoint): string {
  return loops
    .flatMap((loop) => touchedEdges(loop, from, to))
    .map(segmentPath)
    .join("");
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
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radiusMm = chord / (2 * Math.abs(Math.sin(segment.sweepRad / 2)));
  return { ...segment, from, to, radiusMm: Math.max(radiusMm, 1e-6) };
}

function same(a: PlanePoint, b: PlanePoint): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) <= SAME_POINT_MM;
}
