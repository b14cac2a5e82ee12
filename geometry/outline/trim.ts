/** Parts of rows of segments that follow each other. Lengths in mm along the row, from its start. */
import type { Point } from "../language/design.ts";
import type { Segment } from "./segment.ts";
import { lengthOf, pointAt } from "./segment-geometry.ts";
import { SAME_POINT_MM } from "./tolerance.ts";
import { distance } from "./vector.ts";

/** The point of a row at a length along it; null beyond its ends, which are forgiven rounding. */
export function pointAlong(row: readonly Segment[], alongMm: number): Point | null {
  if (alongMm < -SAME_POINT_MM) return null;
  let rest = Math.max(0, alongMm);
  for (const [i, segment] of row.entries()) {
    const length = lengthOf(segment);
    const slack = i === row.length - 1 ? SAME_POINT_MM : 0;
    if (rest <= length + slack) return pointAt(segment, Math.min(1, rest / length));
    rest -= length;
  }
  return null;
}

/**
 * The part of a row between two lengths along it, its new ends placed exactly at `from` and `to`. Slivers shorter than
 * the distance within which two points are one are left out; the part may be empty.
 */
export function partOf(
  row: readonly Segment[],
  startMm: number,
  endMm: number,
  from: Point,
  to: Point,
): Segment[] {
  const parts: Segment[] = [];
  let passed = 0;
  for (const segment of row) {
    const length = lengthOf(segment);
    const start = Math.max(0, startMm - passed);
    const end = Math.min(length, endMm - passed);
    passed += length;
    if (end - start > SAME_POINT_MM) parts.push(pieceOf(segment, start / length, end / length));
  }
  return withEnds(parts, from, to);
}

/** The part of a segment between two fractions of it. */
export function pieceOf(segment: Segment, start: number, end: number): Segment {
  if (start === 0 && end === 1) return segment;
  const ends = { from: pointAt(segment, start), to: pointAt(segment, end) };
  if (segment.kind === "line") return { ...segment, ...ends };
  const { startRad, sweepRad } = segment;
  return { ...segment, ...ends, startRad: startRad + start * sweepRad, sweepRad: sweepRad * (end - start) };
}

/** A row whose ends are moved, by no more than rounding, to where its neighbours are. */
export function withEnds(row: readonly Segment[], from: Point, to: Point): Segment[] {
  return row.map((segment, i) => {
    const start = i === 0 ? from : segment.from;
    const end = i === row.length - 1 ? to : segment.to;
    return start === segment.from && end === segment.to ? segment : { ...segment, from: start, to: end };
  });
}

/**
 * A loop's segments joined without the least gap: each starts in the very point where the one before it ends. The
 * gaps are no larger than rounding, or the points that count as one.
 */
export function joined(segments: readonly Segment[]): Segment[] {
  return segments.map((segment, i) => {
    const from = segments.at(i - 1)?.to ?? segment.from;
    return samePlace(from, segment.from) ? segment : { ...segment, from };
  });
}

const samePlace = (a: Point, b: Point): boolean => distance(a, b) === 0;
