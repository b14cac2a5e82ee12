import { atRound } from "./at-round.ts";
import { type Curve, outwardAt, radiusAt } from "./curve.ts";
import type { Place } from "./offered.ts";
import type { Piece } from "./piece.ts";
import { rootBetween } from "./root.ts";

/** A part of a piece that strikes square. */
export interface SquarePart {
  readonly from: number;
  readonly to: number;
}

/** Which parts of a path strike square, and which of them belong to a tooth. */
export interface Teeth {
  /** The square part of each piece, if any. */
  readonly square: readonly (SquarePart | null)[];
  /** Whether the piece belongs to the climb of a tooth. */
  readonly onTooth: readonly boolean[];
  /** Whether the piece rounds off the top of a tooth, behind its tip. */
  readonly onTop: readonly boolean[];
  /** The pieces that end in a tip farthest out, in order, whether a tooth's or not. */
  readonly tips: readonly number[];
  /** Tips of teeth. */
  readonly teeth: number;
  /** What of the bar is at those tips. */
  readonly toothTips: readonly Place[];
}

/**
 * Tips this near to the largest radius, as a share of it, are at it: a tenth of a µm on a bar of 100 mm,
 * which no shop holds.
 */
const TIP_SHARE = 1e-6;
/** A rise or fall below this share of the largest radius is level: rounding of an arc about the axis. */
const LEVEL_SHARE = 1e-9;

interface Path {
  readonly pieces: readonly Piece[];
  readonly rimMm: number;
}

/**
 * Find the teeth. A climb is a stretch along which the target would have ever farther to go; a tooth is a tip with a
 * climb that has a square part. For another target than an edge that comes straight at the axis, the teeth are those
 * that such an edge finds.
 */
export function teethOf(path: Path, squareStrikeRad: number, plain: Teeth | null): Teeth {
  const { pieces, rimMm } = path;
  const square = pieces.map((piece) => squarePartOf(piece, Math.cos(squareStrikeRad)));
  const slope = slopesOf(path);
  const onTooth = pieces.map(() => false);
  const onTop = pieces.map(() => false);
  // A tip is a peak farthest out.
  const tips = peaksOf(slope).filter((i) => atRound(pieces, i).alongTo >= rimMm * (1 - TIP_SHARE));
  const teeth = tips
    .map((tip) => ({ tip, climb: climbTo(slope, tip) }))
    .filter(({ tip, climb }) =>
      plain ? isAtTip(plain.toothTips, tipOf(pieces, tip)) : climb.some((i) => square[i] !== null),
    );
  for (const { tip, climb } of teeth) {
    // A climb can begin where the target passes the axis: nothing is struck there, the tooth neither.
    for (const i of climb) onTooth[i] = atRound(pieces, i).touch.place !== null;
    for (const i of topBehind(path, slope, tip)) onTop[i] = true;
  }
  const toothTips = plain?.toothTips ?? teeth.flatMap(({ tip }) => tipOf(pieces, tip));
  return { square, onTooth, onTop, tips, teeth: plain?.teeth ?? teeth.length, toothTips };
}

export type Slope = 1 | 0 | -1;

function slopeOf({ alongFrom, alongTo }: Piece, rimMm: number): Slope {
  const rise = alongTo - alongFrom;
  if (Math.abs(rise) <= LEVEL_SHARE * rimMm) return 0;
  return rise > 0 ? 1 : -1;
}

/** Which way `along` runs on each piece. */
export function slopesOf({ pieces, rimMm }: Path): Slope[] {
  return pieces.map((piece) => slopeOf(piece, rimMm));
}

/** Where `along` has risen and next falls: the pieces that end there. */
export function peaksOf(slope: readonly Slope[]): number[] {
  return [...slope.keys()].filter((i) => isPeak(slope, i));
}

function isPeak(slope: readonly Slope[], i: number): boolean {
  if (slope[i] !== 1) return false;
  let next = i + 1;
  while (atRound(slope, next) === 0) next++;
  return atRound(slope, next) === -1;
}

/** The pieces that lead up to a peak, last one first. Level ones in between break nothing. */
export function climbTo(slope: readonly Slope[], tip: number): number[] {
  const climb: number[] = [];
  for (let back = 0; back < slope.length && atRound(slope, tip - back) >= 0; back++) {
    climb.push((tip - back + slope.length) % slope.length);
  }
  return climb;
}

/**
 * The pieces behind a tip that still belong to its top: the land, and the rounding or corner that the tip is on.
 */
function topBehind({ pieces }: Path, slope: readonly Slope[], tip: number): number[] {
  const top: number[] = [];
  const { touch } = atRound(pieces, tip);
  for (let i = tip + 1; i < tip + pieces.length; i++) {
    const piece = atRound(pieces, i);
    const level = atRound(slope, i) === 0;
    const belongs = piece.touch === touch || isRimCorner(piece, pieces);
    if (!level && (!belongs || piece.alongTo > piece.alongFrom)) break;
    top.push(i % pieces.length);
  }
  return top;
}

/** A corner at the largest radius, about which the target turns. */
function isRimCorner({ touch }: Piece, pieces: readonly Piece[]): boolean {
  if (touch.place?.kind !== "corner") return false;
  const rim = atRound(pieces, 0);
  return radiusAt(touch.curve, 0) >= radiusAt(rim.touch.curve, rim.from) * (1 - TIP_SHARE);
}

/** What of the bar is at the end of a piece: the two segments that meet there and their corner, or the one it is on. */
function tipOf(pieces: readonly Piece[], tip: number): Place[] {
  const [before, after] = [atRound(pieces, tip).touch, atRound(pieces, tip + 1).touch];
  if (before.place === null || after.place === null) return [];
  if (before === after) return [before.place];
  const corner: Place = { kind: "corner", index: (before.backwards ? after : before).place?.index ?? 0 };
  return [before.place, after.place, corner];
}

function isAtTip(toothTips: readonly Place[], own: readonly Place[]): boolean {
  return own.some(({ kind, index }) => toothTips.some((tip) => tip.kind === kind && tip.index === index));
}

/**
 * The strike angle runs one way along a piece, so its square part is all of it, one end of it, or nothing.
 */
function squarePartOf({ touch, from, to }: Piece, least: number): SquarePart | null {
  const { place, curve } = touch;
  if (place === null) return null;
  const [first, last] = [outwardAt(curve, from) >= least, outwardAt(curve, to) >= least];
  if (first && last) return { from, to };
  if (!first && !last) return null;
  const edge = squareEdge(curve, least, from, to);
  return first ? { from, to: edge } : { from: edge, to };
}

/** Where the cosine of the strike angle is `least`: s/√(s² + d²) on a line, searched for on an arc. */
function squareEdge(curve: Curve, least: number, from: number, to: number): number {
  if (curve.kind !== "line") return rootBetween((s) => outwardAt(curve, s) - least, from, to);
  const edge = (Math.abs(curve.offset) * least) / Math.sqrt(1 - least * least);
  return Math.min(to, Math.max(from, edge));
}
