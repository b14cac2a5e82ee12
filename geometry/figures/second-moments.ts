import type { Point } from "../language/design.ts";

/** Second moments of area in mm⁴ about some point: xx = ∫y² dA, yy = ∫x² dA, xy = ∫xy dA. */
export interface SecondMoments {
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/** The largest and the smallest second moment in mm⁴, and the direction of the axis that the largest is taken about. */
export interface PrincipalMoments {
  readonly largestMm4: number;
  readonly smallestMm4: number;
  /** From +x counter-clockwise, in (−π/2, π/2]; 0 where every axis serves. */
  readonly axisRad: number;
}

/** ∫r² dA in mm⁴ about the point that `moments` are taken about. */
export function polarSecondMomentMm4(moments: SecondMoments): number {
  return moments.xx + moments.yy;
}

/**
 * Second moments about a point from which the centroid lies `offsetMm` away, given those about the centroid; with the
 * area negated, the other way: those about the centroid, given those about such a point.
 * Source: parallel-axis theorem.
 */
export function movedFromCentroid(moments: SecondMoments, areaMm2: number, offsetMm: Point): SecondMoments {
  const { x, y } = offsetMm;
  return {
    xx: moments.xx + areaMm2 * y * y,
    yy: moments.yy + areaMm2 * x * x,
    xy: moments.xy + areaMm2 * x * y,
  };
}

/**
 * Principal second moments and their axis, about the same point as `moments`.
 * Source: Mohr's circle of second moments.
 */
export function principalMoments(moments: SecondMoments): PrincipalMoments {
  const { xx, yy, xy } = moments;
  const mean = (xx + yy) / 2;
  const radius = Math.hypot((xx - yy) / 2, xy);
  return {
    largestMm4: mean + radius,
    smallestMm4: mean - radius,
    axisRad: radius === 0 ? 0 : Math.atan2(-2 * xy, xx - yy) / 2,
  };
}
