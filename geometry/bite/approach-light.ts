import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { alongAt, type Curve, type LineCurve, outwardAt, turningAt } from "./curve.ts";
import type { Light } from "./light.ts";
import { type Piece, pieceTurnAt } from "./piece.ts";
import { rootBetween } from "./root.ts";

/**
 * The light by which an approaching target sees the bar: rays of slope −κ in the plane of ψ and `along`, κ = v/ω the
 * advance in mm per radian. A ray is told by x = along + κψ, and the target runs along it with ψ.
 */
export function approachLight({ pieces }: BiteProfile, advance: number): Light {
  const pieceAt = (index: number): Piece => atRound(pieces, index);
  const xAt = (index: number, s: number) => {
    const piece = pieceAt(index);
    return alongAt(piece.curve, s) + advance * pieceTurnAt(piece, s);
  };
  const xFrom = (index: number) => pieceAt(index).alongFrom + advance * pieceAt(index).turnFrom;
  return {
    start: xFrom(0),
    count: pieces.length,
    pieceAt,
    xFrom,
    xTo: (index) => pieceAt(index).alongTo + advance * pieceAt(index).turnTo,
    xBound: (index) => {
      const { alongFrom, alongTo, turnFrom, turnTo } = pieceAt(index);
      return Math.max(alongFrom, alongTo) + advance * Math.max(turnFrom, turnTo);
    },
    turnOf: (index) => turnOf(pieceAt(index), advance),
    xAt,
    find: (index, from, to, x) => rootBetween((s) => xAt(index, s) - x, from, to),
    farAt: (index, s) => pieceTurnAt(pieceAt(index), s),
  };
}

/** Where the slope is −κ. */
function turnOf({ curve, canTurn, steepFrom, steepTo, from, to }: Piece, advance: number): number | null {
  if (!canTurn || steepFrom > advance === steepTo > advance) return null;
  return Math.min(to, Math.max(from, turnPlace(curve, advance, from, to)));
}

function turnPlace(curve: Curve, advance: number, from: number, to: number): number {
  if (curve.kind === "line" && curve.aside === 0) return lineTurn(curve, advance);
  if (curve.kind === "support") return supportTurn(Math.asin(advance / curve.reach), from, to);
  return rootBetween((s) => outwardAt(curve, s) + advance * turningAt(curve, s), from, to);
}

/** s·√(s² + d²) = −κd, solved without cancellation. */
function lineTurn({ offset }: LineCurve, advance: number): number {
  const ratio = (2 * advance) / offset;
  return -Math.sign(offset) * advance * Math.sqrt(2 / (1 + Math.sqrt(1 + ratio * ratio)));
}

/** reach·sin s = κ, on either side of a right angle. */
function supportTurn(acute: number, from: number, to: number): number {
  return from + to > Math.PI ? Math.PI - acute : acute;
}
