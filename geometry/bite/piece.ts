import type { Loop, Segment } from "../outline/segment.ts";
import { norm } from "../outline/vector.ts";
import { atRound } from "./at-round.ts";
import { aroundAt, bareThetaAt, type Curve, curveOf, outwardAt, radiusAt } from "./curve.ts";
import { cutsOf } from "./cuts.ts";

/**
 * A part of a segment along which the radius, θ, the slope dr/dθ and the strike angle each run one way. `s`
 * grows from `from` to `to` in the order in which the outline is offered to the target.
 */
export interface Piece {
  readonly curve: Curve;
  /** The segment's place in the offered loop, and the range of `s` of the whole segment. */
  readonly segment: number;
  readonly segmentFrom: number;
  readonly segmentTo: number;
  readonly from: number;
  readonly to: number;
  readonly radiusFrom: number;
  readonly radiusTo: number;
  /** θ unwrapped along the outline. */
  readonly thetaFrom: number;
  readonly thetaTo: number;
  /** What to add to the curve's own θ. */
  readonly thetaOffset: number;
  readonly rises: boolean;
  /**
   * True where the radius and θ + (something)·r can run against each other: falling forwards, or rising
   * backwards.
   */
  readonly canTurn: boolean;
  /** |dr/dθ| at the ends. */
  readonly steepFrom: number;
  readonly steepTo: number;
}

export function thetaAt(piece: Piece, s: number): number {
  return piece.thetaOffset + bareThetaAt(piece.curve, s);
}

/** |dr/dθ|, infinite on a radial face. */
export function steepnessAt(curve: Curve, s: number): number {
  return (radiusAt(curve, s) * Math.abs(outwardAt(curve, s))) / Math.abs(aroundAt(curve, s));
}

/** The strike angle: 0 on a radial face that leads, above a right angle on a face that falls away. */
export function strikeAngleAt(piece: Piece, s: number): number {
  return Math.acos(Math.min(1, Math.max(-1, outwardAt(piece.curve, s))));
}

/** A piece before it is known where the count of θ begins. */
interface Cutting {
  readonly curve: Curve;
  readonly segment: number;
  readonly segmentFrom: number;
  readonly segmentTo: number;
  readonly from: number;
  readonly to: number;
  readonly radiusFrom: number;
  readonly radiusTo: number;
}

/**
 * The pieces of a loop given in offering order, from the first point of the largest radius, where θ is 0,
 * round to it again.
 */
export function piecesOf(offered: Loop): Piece[] {
  const cuttings = offered.segments.flatMap(cuttingsOf);
  const tip = cuttings.reduce(
    (best, { radiusFrom }, i) => (radiusFrom > (cuttings[best]?.radiusFrom ?? 0) ? i : best),
    0,
  );
  let theta = 0;
  return cuttings.map((_, i) => {
    const piece = pieceOf(atRound(cuttings, tip + i), theta);
    theta = piece.thetaTo;
    return piece;
  });
}

function cuttingsOf(segment: Segment, index: number): Cutting[] {
  const { curve, from, to } = curveOf(segment);
  const ends = [from, ...cutsOf(curve, from, to), to];
  const last = ends.length - 2;
  return ends.slice(0, -1).map((start, i) => {
    const end = ends[i + 1] ?? to;
    // Angles on an arc are kept within half a turn.
    const shift = curve.kind === "arc" ? 2 * Math.PI * Math.round((start + end) / (4 * Math.PI)) : 0;
    return {
      curve,
      segment: index,
      segmentFrom: from - shift,
      segmentTo: to - shift,
      from: start - shift,
      to: end - shift,
      // The ends of a segment as they are written, so that neighbours agree to the last digit.
      radiusFrom: i === 0 ? norm(segment.from) : radiusAt(curve, start),
      radiusTo: i === last ? norm(segment.to) : radiusAt(curve, end),
    };
  });
}

function pieceOf(cutting: Cutting, thetaFrom: number): Piece {
  const { curve, segment, segmentFrom, segmentTo, from, to, radiusFrom, radiusTo } = cutting;
  const middle = (from + to) / 2;
  const outward = outwardAt(curve, middle);
  const thetaOffset = thetaFrom - bareThetaAt(curve, from);
  return {
    curve,
    segment,
    segmentFrom,
    segmentTo,
    from,
    to,
    radiusFrom,
    radiusTo,
    thetaFrom,
    thetaTo: thetaOffset + bareThetaAt(curve, to),
    thetaOffset,
    rises: outward > 0,
    canTurn: outward * aroundAt(curve, middle) < 0,
    steepFrom: steepnessAt(curve, from),
    steepTo: steepnessAt(curve, to),
  };
}
