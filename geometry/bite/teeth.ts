import { atRound } from "./at-round.ts";
import { type Curve, outwardAt } from "./curve.ts";
import type { Piece } from "./piece.ts";
import { rootBetween } from "./root.ts";

/** A part of a piece that strikes square. */
export interface SquarePart {
  readonly from: number;
  readonly to: number;
}

/** Which parts of an outline strike square, and which of them lead up to a tip. */
export interface Teeth {
  /** The square part of each piece, if any. */
  readonly square: readonly (SquarePart | null)[];
  /** Whether the piece belongs to the climb of a tooth. */
  readonly onTooth: readonly boolean[];
  /** The pieces that end in a tip at the largest radius, in order, whether a tooth's or not. */
  readonly tips: readonly number[];
  /** Tips whose climb has a square part. */
  readonly teeth: number;
}

/**
 * Tips this near to the largest radius, as a share of it, are at it: a tenth of a µm on a bar of 100 mm,
 * which no shop holds.
 */
const TIP_SHARE = 1e-6;
/** A rise or fall below this share of the largest radius is level: rounding of an arc about the axis. */
const LEVEL_SHARE = 1e-9;

interface Outline {
  readonly pieces: readonly Piece[];
  readonly maxRadiusMm: number;
}

/**
 * Find the teeth. A climb is a stretch along which the radius never falls; a tooth is a tip with a climb that
 * has a square part.
 */
export function teethOf({ pieces, maxRadiusMm }: Outline, squareStrikeRad: number): Teeth {
  const square = pieces.map((piece) => squarePartOf(piece, Math.cos(squareStrikeRad)));
  const slope = pieces.map((piece) => slopeOf(piece, maxRadiusMm));
  const onTooth = pieces.map(() => false);
  const tips = [...pieces.keys()].filter((i) => isTip(pieces, slope, maxRadiusMm, i));
  const climbs = tips
    .map((tip) => climbTo(slope, tip))
    .filter((climb) => climb.some((i) => square[i] !== null));
  for (const i of climbs.flat()) onTooth[i] = true;
  return { square, onTooth, tips, teeth: climbs.length };
}

type Slope = 1 | 0 | -1;

function slopeOf({ radiusFrom, radiusTo }: Piece, maxRadiusMm: number): Slope {
  const rise = radiusTo - radiusFrom;
  if (Math.abs(rise) <= LEVEL_SHARE * maxRadiusMm) return 0;
  return rise > 0 ? 1 : -1;
}

/** A tip is where the radius has risen to the largest one and next falls. */
function isTip(pieces: readonly Piece[], slope: readonly Slope[], maxRadiusMm: number, i: number): boolean {
  if (slope[i] !== 1 || atRound(pieces, i).radiusTo < maxRadiusMm * (1 - TIP_SHARE)) return false;
  let next = i + 1;
  while (atRound(slope, next) === 0) next++;
  return atRound(slope, next) === -1;
}

/** The pieces that lead up to a tip, last one first. Level ones in between break nothing. */
function climbTo(slope: readonly Slope[], tip: number): number[] {
  const climb: number[] = [];
  for (let back = 0; back < slope.length && atRound(slope, tip - back) >= 0; back++) {
    climb.push((tip - back + slope.length) % slope.length);
  }
  return climb;
}

/**
 * The strike angle runs one way along a piece, so its square part is all of it, one end of it, or nothing.
 */
function squarePartOf({ curve, from, to }: Piece, least: number): SquarePart | null {
  const [first, last] = [outwardAt(curve, from) >= least, outwardAt(curve, to) >= least];
  if (first && last) return { from, to };
  if (!first && !last) return null;
  const edge = squareEdge(curve, least, from, to);
  return first ? { from, to: edge } : { from: edge, to };
}

/** Where the cosine of the strike angle is `least`: s/√(s² + d²) on a line, searched for on an arc. */
function squareEdge(curve: Curve, least: number, from: number, to: number): number {
  if (curve.kind === "arc") return rootBetween((s) => outwardAt(curve, s) - least, from, to);
  const edge = (Math.abs(curve.offset) * least) / Math.sqrt(1 - least * least);
  return Math.min(to, Math.max(from, edge));
}
