import { atRound } from "./at-round.ts";
import {
  alongAt,
  bareThetaAt,
  type Curve,
  outwardAt,
  steepnessAt,
  turnAt,
  turningAt,
  turnWhere,
} from "./curve.ts";
import { cutsOfBoth } from "./cuts.ts";
import type { Offered, Touch } from "./offered.ts";

/**
 * A part of the path along which the distance to go, ψ, the slope between them and the strike angle each run one
 * way. `s` grows from `from` to `to` in the order in which the path is offered to the target.
 */
export interface Piece {
  readonly curve: Curve;
  /** What of the bar is touched here. */
  readonly touch: Touch;
  /** Whole turns taken off the touch's own `s`. */
  readonly shift: number;
  readonly from: number;
  readonly to: number;
  readonly alongFrom: number;
  readonly alongTo: number;
  /** ψ unwrapped along the path. */
  readonly turnFrom: number;
  readonly turnTo: number;
  /** θ at `from`, against the bar as drawn. */
  readonly thetaFrom: number;
  /** What to add to the curve's own ψ. */
  readonly turnOffset: number;
  readonly rises: boolean;
  /**
   * True where `along` and ψ + (something)·along can run against each other: falling forwards, or rising
   * backwards.
   */
  readonly canTurn: boolean;
  /** |d along/dψ| at the ends. */
  readonly steepFrom: number;
  readonly steepTo: number;
}

/** ψ, unwrapped. */
export function pieceTurnAt(piece: Piece, s: number): number {
  return piece.turnOffset + turnAt(piece.curve, s);
}

/** The strike angle: 0 on a radial face that leads, above a right angle on a face that falls away. */
export function strikeAngleAt({ touch }: Piece, s: number): number {
  return Math.acos(Math.min(1, Math.max(-1, outwardAt(touch.curve, s))));
}

/** A piece before it is known where the count of ψ begins. */
type Cutting = Pick<
  Piece,
  "curve" | "touch" | "shift" | "from" | "to" | "alongFrom" | "alongTo" | "thetaFrom"
>;

/**
 * The pieces of a path, from the first point that is farthest out, where ψ is 0, round to it again. An empty path has
 * none.
 */
export function piecesOf(offered: readonly Offered[]): Piece[] {
  const cuttings = offered.flatMap(cuttingsOf);
  const tip = cuttings.reduce(
    (best, { alongFrom }, i) => (alongFrom > (cuttings[best]?.alongFrom ?? 0) ? i : best),
    0,
  );
  let turn = 0;
  return cuttings.map((_, i) => {
    const piece = pieceOf(atRound(cuttings, tip + i), turn);
    turn = piece.turnTo;
    return piece;
  });
}

function cuttingsOf({ curve, touch, from, to, alongFrom, alongTo, thetaFrom }: Offered): Cutting[] {
  const ends = [from, ...cutsOfBoth(curve, touch.curve, from, to), to];
  const last = ends.length - 2;
  return ends.slice(0, -1).map((start, i) => {
    const end = ends[i + 1] ?? to;
    // Angles on an arc are kept within half a turn.
    const shift = curve.kind === "line" ? 0 : 2 * Math.PI * Math.round((start + end) / (4 * Math.PI));
    return {
      curve,
      touch,
      shift,
      from: start - shift,
      to: end - shift,
      // The ends as they are given, so that neighbours agree to the last digit.
      alongFrom: i === 0 ? alongFrom : alongAt(curve, start),
      alongTo: i === last ? alongTo : alongAt(curve, end),
      thetaFrom: thetaFrom + bareThetaAt(curve, start) - bareThetaAt(curve, from),
    };
  });
}

/** Written out, not spread: a walk reads these a million times a second, and spread objects are slow to read. */
function pieceOf(cutting: Cutting, turnFrom: number): Piece {
  const { curve, touch, shift, from, to, alongFrom, alongTo, thetaFrom } = cutting;
  const middle = (from + to) / 2;
  const outward = outwardAt(curve, middle);
  const turnOffset = turnFrom - turnWhere(curve, from, alongFrom);
  return {
    curve,
    touch,
    shift,
    from,
    to,
    alongFrom,
    alongTo,
    turnFrom,
    turnTo: turnOffset + turnWhere(curve, to, alongTo),
    thetaFrom,
    turnOffset,
    rises: outward > 0,
    canTurn: outward * turningAt(curve, middle) < 0,
    steepFrom: steepnessAt(curve, from),
    steepTo: steepnessAt(curve, to),
  };
}
