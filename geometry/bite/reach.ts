/**
 * Figures of a lit part, as reaches: integrals over x, to be divided by the period 2πκ for a share or a mean.
 */
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { alongAt, placeAt } from "./curve.ts";
import { depthSwept } from "./depth-swept.ts";
import type { Lit } from "./light.ts";
import { pieceTurnAt } from "./piece.ts";
import type { SquarePart } from "./teeth.ts";

/** A lit part with the depths at its ends. */
export interface LitDepths {
  readonly part: Lit;
  readonly depthFrom: number;
  readonly depthTo: number;
}

/** A lit part with its depths of bite, in mm. In between the depth runs one way. */
export function litDepths(profile: BiteProfile, part: Lit): LitDepths {
  const { index, from, to } = part;
  const piece = atRound(profile.pieces, index);
  const rim = profile.rimMm;
  const alongFrom = from === piece.from ? piece.alongFrom : alongAt(piece.curve, from);
  const alongTo = to === piece.to ? piece.alongTo : alongAt(piece.curve, to);
  return { part, depthFrom: Math.max(0, rim - alongFrom), depthTo: Math.max(0, rim - alongTo) };
}

/** ∫(depth) dx over a lit part, dx = d along + κ dψ. */
export function depthReach(
  profile: BiteProfile,
  advance: number,
  { part: { index, from, to }, depthFrom, depthTo }: LitDepths,
): number {
  const piece = atRound(profile.pieces, index);
  const whole = from === piece.from && to === piece.to;
  const swept = whole ? atRound(profile.depthSwept, index) : depthSwept(piece.curve, profile.rimMm, from, to);
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
  const start = square.from <= from ? xFrom : xAt(profile, advance, index, square.from);
  const end = square.to >= to ? xTo : xAt(profile, advance, index, square.to);
  return Math.max(0, end - start);
}

/**
 * How much of the reach of a lit part is no deeper than a depth that lies between those of its ends;
 * `isShallowFrom` tells which end is the shallower one.
 */
export function shallowReach(
  profile: BiteProfile,
  advance: number,
  { index, from, to, xFrom, xTo }: Lit,
  isShallowFrom: boolean,
  depthMm: number,
): number {
  const { curve } = atRound(profile.pieces, index);
  const x = xAt(profile, advance, index, placeAt(curve, from, to, profile.rimMm - depthMm));
  return Math.min(xTo - xFrom, Math.max(0, isShallowFrom ? x - xFrom : xTo - x));
}

function xAt({ pieces }: BiteProfile, advance: number, index: number, s: number): number {
  const piece = atRound(pieces, index);
  return alongAt(piece.curve, s) + advance * pieceTurnAt(piece, s);
}
