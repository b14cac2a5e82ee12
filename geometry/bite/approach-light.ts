import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { aroundAt, type Curve, type LineCurve, outwardAt, radiusAt } from "./curve.ts";
import type { Light } from "./light.ts";
import { type Piece, thetaAt } from "./piece.ts";
import { rootBetween } from "./root.ts";

/**
 * The light by which an approaching edge sees the bar: rays of slope −κ in the plane of θ and r, κ = v/ω the
 * advance in mm per radian. A ray is told by x = r + κθ, and the target runs along it with θ.
 */
export function approachLight({ pieces }: BiteProfile, advance: number): Light {
  const pieceAt = (index: number): Piece => atRound(pieces, index);
  const xAt = (index: number, s: number) => {
    const piece = pieceAt(index);
    return radiusAt(piece.curve, s) + advance * thetaAt(piece, s);
  };
  const xFrom = (index: number) => pieceAt(index).radiusFrom + advance * pieceAt(index).thetaFrom;
  return {
    start: xFrom(0),
    count: pieces.length,
    pieceAt,
    xFrom,
    xTo: (index) => pieceAt(index).radiusTo + advance * pieceAt(index).thetaTo,
    xBound: (index) => {
      const { radiusFrom, radiusTo, thetaFrom, thetaTo } = pieceAt(index);
      return Math.max(radiusFrom, radiusTo) + advance * Math.max(thetaFrom, thetaTo);
    },
    turnOf: (index) => turnOf(pieceAt(index), advance),
    xAt,
    find: (index, from, to, x) => rootBetween((s) => xAt(index, s) - x, from, to),
    farAt: (index, s) => thetaAt(pieceAt(index), s),
  };
}

/** Where the slope dr/dθ is −κ. */
function turnOf({ curve, canTurn, steepFrom, steepTo, from, to }: Piece, advance: number): number | null {
  if (!canTurn || steepFrom > advance === steepTo > advance) return null;
  const place = curve.kind === "line" ? lineTurn(curve, advance) : arcTurn(curve, advance, from, to);
  return Math.min(to, Math.max(from, place));
}

/** s·√(s² + d²) = −κd, solved without cancellation. */
function lineTurn({ offset }: LineCurve, advance: number): number {
  const ratio = (2 * advance) / offset;
  return -Math.sign(offset) * advance * Math.sqrt(2 / (1 + Math.sqrt(1 + ratio * ratio)));
}

function arcTurn(curve: Curve, advance: number, from: number, to: number): number {
  const climb = (s: number) => outwardAt(curve, s) + (advance * aroundAt(curve, s)) / radiusAt(curve, s);
  return rootBetween(climb, from, to);
}
