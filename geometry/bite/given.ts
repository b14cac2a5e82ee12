/** Pieces told in terms of the loop as it was given. */
import type { Point } from "../language/design.ts";
import { pointAt } from "../outline/segment-geometry.ts";
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import type { Piece } from "./piece.ts";

const TURN = 2 * Math.PI;

/**
 * How far along the touched segment a place on a piece is, as a fraction of the way from the segment's `from` to its
 * `to`.
 */
export function fractionAt({ touch, curve, shift }: Piece, s: number): number {
  const { from, to, backwards } = touch;
  const middle = (from + to) / 2;
  const own = curve.kind === "line" ? s : middle + nearestTurn(s + shift - middle);
  const fraction = Math.min(1, Math.max(0, (own - from) / (to - from)));
  return backwards ? 1 - fraction : fraction;
}

/** An angle brought to the one within half a turn of 0. */
function nearestTurn(angle: number): number {
  return angle - TURN * Math.round(angle / TURN);
}

/** The point of the bar that is touched, as drawn; null where the target has passed. */
export function pointOn({ outer }: BiteProfile, piece: Piece, s: number): Point | null {
  const { place } = piece.touch;
  if (place === null) return null;
  const segment = atRound(outer.segments, place.index);
  return place.kind === "corner" ? segment.to : pointAt(segment, fractionAt(piece, s));
}
