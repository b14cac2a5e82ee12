import type { Point } from "../../language/design.ts";
import { dot, times } from "../../outline/vector.ts";
import { type Spread, unitVariance } from "./deviation.ts";
import { type BalanceModel, CAUSES, type Cause } from "./model.ts";

/** Mean in g·mm and covariance in (g·mm)² of the static moment. */
export interface Moments {
  readonly mean: Point;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** The thickness as a share of the nominal one, and the slope of it across the plate in mm per mm at its limit. */
export interface ThicknessSpread {
  readonly meanShare: number;
  readonly halfRangeShare: number;
  readonly slopeLimit: number;
}

/**
 * Exactly what sampling aims at: with τ the thickness as a share, S = τ(M + Σξᵢaᵢ) + wedge, all independent, so
 * cov S = E[τ²]·Σσ²aaᵀ + var τ·MMᵀ + ½E[slope²]·(wxwxᵀ + wywyᵀ), the direction of the wedge being anywhere.
 */
export function momentsOf(model: BalanceModel, thickness: ThicknessSpread, spread: Spread): Moments {
  const variance = unitVariance(spread);
  const { meanShare, halfRangeShare } = thickness;
  const thicknessVariance = variance * halfRangeShare * halfRangeShare;
  const square = meanShare * meanShare + thicknessVariance;
  let [xx, xy, yy] = [0, 0, 0];
  const add = ({ x, y }: Point, weight: number) => {
    xx += weight * x * x;
    xy += weight * x * y;
    yy += weight * y * y;
  };
  for (const { momentGMm } of model.influences) add(momentGMm, variance * square);
  add(model.momentGMm, thicknessVariance);
  const slope = (variance * thickness.slopeLimit ** 2) / 2;
  add(model.wedge.alongX, slope);
  add(model.wedge.alongY, slope);
  return { mean: times(model.momentGMm, meanShare), xx, xy, yy };
}

/** How much each cause alone scatters the moment: the root of its mean square, g·mm; the largest first. */
export function causesOf(
  model: BalanceModel,
  thickness: ThicknessSpread,
  spread: Spread,
): readonly { readonly cause: Cause; readonly rmsGMm: number }[] {
  const variance = unitVariance(spread);
  const { alongX, alongY } = model.wedge;
  const wedge = (variance * thickness.slopeLimit ** 2 * (dot(alongX, alongX) + dot(alongY, alongY))) / 2;
  const ofCause = (cause: Cause): number =>
    model.influences.reduce((sum, influence) => {
      if (influence.cause !== cause) return sum;
      return sum + variance * dot(influence.momentGMm, influence.momentGMm);
    }, 0);
  return CAUSES.map((cause) => ({
    cause,
    rmsGMm: cause === "wedge" ? Math.sqrt(wedge) : thickness.meanShare * Math.sqrt(ofCause(cause)),
  })).sort((a, b) => b.rmsGMm - a.rmsGMm);
}
