import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { aroundAt, outwardAt, radiusAt } from "./curve.ts";
import type { Light } from "./light.ts";
import { type Piece, thetaAt } from "./piece.ts";
import { rootBetween } from "./root.ts";

/**
 * The light of a lamp at a tip, over the outline from there to the next tip. A ray is told by x = −K, K its
 * slope: how much it loses in radius for each radian. It is level, K = 0, towards the next tip, and steeper
 * farther down; rays steeper than `steepest` are not looked at.
 *
 * Where the next tip is higher or lower by rounding, slopes are measured from the line through both.
 */
export interface TipLight extends Light {
  /** The advance at which the target's path is the ray `x`. */
  advanceOf(x: number): number;
}

/**
 * The lamp at the end of one tip's climb, over the `count` pieces behind it, the last of which ends in the
 * next tip.
 */
export function tipLight({ pieces }: BiteProfile, tip: number, count: number, steepest: number): TipLight {
  const pieceAt = (index: number): Piece => atRound(pieces, tip + 1 + index);
  const lapped = (index: number) => (tip + 1 + index >= pieces.length ? 2 * Math.PI : 0);
  const [first, last] = [pieceAt(0), pieceAt(count - 1)];
  const theta = first.thetaFrom + lapped(0);
  const level = (last.radiusTo - first.radiusFrom) / (last.thetaTo + lapped(count - 1) - theta);

  const behind = (index: number, s: number) => thetaAt(pieceAt(index), s) + lapped(index) - theta;
  const below = (index: number, s: number) =>
    first.radiusFrom + level * behind(index, s) - radiusAt(pieceAt(index).curve, s);
  const xOf = (drop: number, way: number) => (way > 0 ? Math.max(-drop / way, -2 * steepest) : -2 * steepest);
  const xAt = (index: number, s: number) => xOf(below(index, s), behind(index, s));
  // The sine, up to a positive factor, by which the outline turns off the ray to the left.
  const off = (index: number, s: number) => {
    const { curve } = pieceAt(index);
    const around = aroundAt(curve, s) / radiusAt(curve, s);
    return around * below(index, s) + behind(index, s) * (outwardAt(curve, s) - level * around);
  };
  const start = Math.max(-steepest, -backSlope(first) - level);

  return {
    start,
    count,
    pieceAt,
    xFrom: (index) => (index === 0 ? start : xAt(index, pieceAt(index).from)),
    xTo: (index) => (index === count - 1 ? 0 : xAt(index, pieceAt(index).to)),
    xBound: (index) => {
      const { radiusFrom, radiusTo, thetaFrom, thetaTo } = pieceAt(index);
      const way = Math.max(thetaFrom, thetaTo) + lapped(index) - theta;
      const drop = first.radiusFrom + Math.min(0, level * way) - Math.max(radiusFrom, radiusTo);
      return drop > 0 ? xOf(drop, way) : 0;
    },
    turnOf: (index) => {
      const { canTurn, from, to } = pieceAt(index);
      if (!canTurn || index === 0 || off(index, from) > 0 === off(index, to) > 0) return null;
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
  return aroundAt(curve, (from + to) / 2) > 0 ? steepFrom : Number.POSITIVE_INFINITY;
}
