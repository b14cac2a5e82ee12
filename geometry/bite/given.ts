/** Pieces told in terms of the loop as it was given. */
import type { Point } from "../language/design.ts";
import { pointAt } from "../outline/segment-geometry.ts";
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import type { Piece } from "./piece.ts";

/**
 * The place of a piece's segment in the loop. A bar that turns counter-clockwise offers its outline
 * backwards.
 */
export function segmentOf({ outer, direction }: BiteProfile, { segment }: Piece): number {
  return direction === "ccw" ? outer.segments.length - 1 - segment : segment;
}

/**
 * How far along its segment a place on a piece is, as a fraction of the way from the segment's `from` to its
 * `to`.
 */
export function fractionAt({ direction }: BiteProfile, piece: Piece, s: number): number {
  const { segmentFrom, segmentTo } = piece;
  const fraction = Math.min(1, Math.max(0, (s - segmentFrom) / (segmentTo - segmentFrom)));
  return direction === "ccw" ? 1 - fraction : fraction;
}

/** The point of the bar, as drawn. */
export function pointOn(profile: BiteProfile, piece: Piece, s: number): Point {
  const segment = atRound(profile.outer.segments, segmentOf(profile, piece));
  return pointAt(segment, fractionAt(profile, piece, s));
}
