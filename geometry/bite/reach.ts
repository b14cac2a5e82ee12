/**
 * Figures of a lit part, as reaches: integrals over x, to be divided by the period 2πκ for a share or a mean.
 */
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { depthSwept, radiusAt } from "./curve.ts";
import type { Lit } from "./light.ts";
import { thetaAt } from "./piece.ts";
import type { SquarePart } from "./teeth.ts";

/** The depths of bite at both ends of a lit part, in mm. In between the depth runs one way. */
export function depthsAt(profile: BiteProfile, { index, from, to }: Lit): [from: number, to: number] {
  const piece = atRound(profile.pieces, index);
  const rim = profile.maxRadiusMm;
  const radiusFrom = from === piece.from ? piece.radiusFrom : radiusAt(piece.curve, from);
  const radiusTo = to === piece.to ? piece.radiusTo : radiusAt(piece.curve, to);
  return [Math.max(0, rim - radiusFrom), Math.max(0, rim - radiusTo)];
}

/** ∫(depth) dx over a lit part, dx = dr + κ dθ; the depths at its ends are given. */
export function depthReach(
  profile: BiteProfile,
  advance: number,
  { index, from, to }: Lit,
  [depthFrom, depthTo]: readonly [number, number],
): number {
  const piece = atRound(profile.pieces, index);
  const whole = from === piece.from && to === piece.to;
  const swept = whole
    ? atRound(profile.depthSwept, index)
    : depthSwept(piece.curve, profile.maxRadiusMm, from, to);
  return ((depthFrom - depthTo) * (depthFrom + depthTo)) / 2 + advance * swept;
}

/** How much of the reach of a lit part is square, given the square part of its piece. */
export function squareReach(
  profile: BiteProfile,
  advance: number,
  { index, from, to, xFrom, xTo }: Lit,
  square: SquarePart | null,
): number {
  if (square === null || square.to <= from || square.from >= to) return 0;
  const piece = atRound(profile.pieces, index);
  const xAt = (s: number) => radiusAt(piece.curve, s) + advance * thetaAt(piece, s);
  const start = square.from <= from ? xFrom : xAt(square.from);
  const end = square.to >= to ? xTo : xAt(square.to);
  return Math.max(0, end - start);
}
