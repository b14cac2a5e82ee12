import type { Segment } from "../segment.ts";
import { lengthOf } from "../segment-geometry.ts";
import { pieceOf } from "../trim.ts";
import { distance } from "../vector.ts";
import type { Piece } from "./pieces.ts";
import { curveAt, type Stretch } from "./strand.ts";

/** The boundary with what was cut apart on one strand put together again, from the outline's earliest part on. */
export function united(boundary: readonly Piece[], distanceMm: number): Piece[] {
  const rows: Piece[][] = [];
  for (const piece of fromEarliest(boundary)) {
    const row = rows.at(-1);
    const last = row?.at(-1);
    if (row !== undefined && last?.strand === piece.strand && last.end <= piece.start) row.push(piece);
    else rows.push([piece]);
  }
  return rows.flatMap((row) => unitedRow(row, distanceMm)).map(withSweepOfChord);
}

function unitedRow(row: readonly Piece[], distanceMm: number): readonly Piece[] {
  const [first, last] = [row[0], row.at(-1)];
  if (first === undefined || last === undefined || row.length === 1) return row;
  const { strand, start, fromNode } = first;
  const { end, toNode } = last;
  const whole = curveAt(strand, distanceMm, 0);
  if (whole === null) return row;
  const ends = { from: first.segment.from, to: last.segment.to };
  const segment: Segment = { ...pieceOf(whole, start, end), ...ends };
  return [{ strand, start, end, segment, fromNode, toNode }];
}

/**
 * A cut arc with its sweep from its chord. The directions of its ends differ by little on a flat arc of many metres, and
 * their difference keeps few digits.
 */
function withSweepOfChord(piece: Piece): Piece {
  const { segment, start, end } = piece;
  const isWhole = start === 0 && end === 1;
  if (segment.kind === "line" || isWhole || Math.abs(segment.sweepRad) > Math.PI / 2) return piece;
  const { from, to, radiusMm, sweepRad } = segment;
  const sizeRad = 2 * Math.asin(distance(from, to) / (2 * radiusMm));
  return { ...piece, segment: { ...segment, sweepRad: Math.sign(sweepRad) * sizeRad } };
}

/** Turned so that the first piece is the one that comes first along the outline. */
function fromEarliest(boundary: readonly Piece[]): readonly Piece[] {
  const earliest = boundary.reduce(
    (least, piece, i) => (comesBefore(piece, boundary[least] ?? piece) ? i : least),
    0,
  );
  return [...boundary.slice(earliest), ...boundary.slice(0, earliest)];
}

function comesBefore(a: Piece, b: Piece): boolean {
  return a.strand.order < b.strand.order || (a.strand === b.strand && a.start < b.start);
}

/** What is left of a strand for greater distances: no more than the piece, widened for rounding. */
export function withSlack({ strand, start, end, segment }: Piece, slackMm: number): Stretch {
  const slack = (slackMm * (end - start)) / lengthOf(segment);
  return { strand, start: Math.max(0, start - slack), end: Math.min(1, end + slack) };
}
