import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { alongAt, outwardAt, turningAt } from "./curve.ts";
import type { Light } from "./light.ts";
import { type Piece, pieceTurnAt } from "./piece.ts";
import { rootBetween } from "./root.ts";

/** The pieces after one another that a lamp shines on, the last of which ends in the next tip. */
export interface Section {
  /** Counted on past the end of the list where the section begins after a whole turn. */
  readonly first: number;
  readonly count: number;
}

/** Where a lamp stands: ψ and `along`. */
export interface Lamp {
  readonly turn: number;
  readonly along: number;
}

/**
 * The light of a lamp at a tip, over the path from there to the next tip. A ray is told by x = −K, K its slope: how
 * much it loses in `along` for each radian. It is level, K = 0, towards the next tip, and steeper farther down; rays
 * steeper than `steepest` are not looked at.
 *
 * Where the next tip is higher or lower by rounding, slopes are measured from the line through both.
 */
export interface TipLight extends Light {
  /** The advance at which the target's path is the ray `x`. */
  advanceOf(x: number): number;
}

/** A piece of a section, and what to add to its ψ there. */
export function pieceOfSection({ pieces }: BiteProfile, place: number): { piece: Piece; lapped: number } {
  return { piece: atRound(pieces, place), lapped: place >= pieces.length ? 2 * Math.PI : 0 };
}

/** The light of a lamp at the start of a section, or before it with nothing in between that counts. */
export function tipLight(
  profile: BiteProfile,
  { first, count }: Section,
  lamp: Lamp | null,
  steepest: number,
): TipLight {
  const placed = (index: number) => pieceOfSection(profile, first + index);
  const pieceAt = (index: number): Piece => placed(index).piece;
  const { piece: start, lapped: startLapped } = placed(0);
  const { piece: end, lapped: endLapped } = placed(count - 1);
  const { turn, along } = lamp ?? { turn: start.turnFrom + startLapped, along: start.alongFrom };
  const level = (end.alongTo - along) / (end.turnTo + endLapped - turn);

  const behind = (index: number, s: number) => {
    const { piece, lapped } = placed(index);
    return pieceTurnAt(piece, s) + lapped - turn;
  };
  const below = (index: number, s: number) =>
    along + level * behind(index, s) - alongAt(pieceAt(index).curve, s);
  const xOf = (drop: number, way: number) => (way > 0 ? Math.max(-drop / way, -2 * steepest) : -2 * steepest);
  const xAt = (index: number, s: number) => xOf(below(index, s), behind(index, s));
  // The sine, up to a positive factor, by which the path turns off the ray to the left.
  const off = (index: number, s: number) => {
    const { curve } = pieceAt(index);
    const turning = turningAt(curve, s);
    return turning * below(index, s) + behind(index, s) * (outwardAt(curve, s) - level * turning);
  };
  const least = lamp === null ? -backSlope(start) - level : xAt(0, start.from);
  const from = Math.max(-steepest, least);

  return {
    start: from,
    count,
    pieceAt,
    xFrom: (index) => (index === 0 ? from : xAt(index, pieceAt(index).from)),
    xTo: (index) => (index === count - 1 ? 0 : xAt(index, pieceAt(index).to)),
    xBound: (index) => {
      const { piece, lapped } = placed(index);
      const way = Math.max(piece.turnFrom, piece.turnTo) + lapped - turn;
      const drop = along + Math.min(0, level * way) - Math.max(piece.alongFrom, piece.alongTo);
      return drop > 0 ? xOf(drop, way) : 0;
    },
    turnOf: (index) => {
      const { canTurn, from, to } = pieceAt(index);
      if (!canTurn || (index === 0 && lamp === null) || off(index, from) > 0 === off(index, to) > 0)
        return null;
      return rootBetween((s) => off(index, s), from, to);
    },
    xAt,
    find: (index, from, to, x) => rootBetween((s) => x * behind(index, s) + below(index, s), from, to),
    farAt: behind,
    advanceOf: (x) => Math.max(0, -x - level),
  };
}

/** How steeply the back of a tooth falls from its tip; without end where it is radial or undercut. */
function backSlope({ curve, from, to, steepFrom }: Piece): number {
  return turningAt(curve, (from + to) / 2) > 0 ? steepFrom : Number.POSITIVE_INFINITY;
}
