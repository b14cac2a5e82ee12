import type { Point } from "../../language/design.ts";
import type { ThicknessSpread } from "./covariance.ts";
import { deviation, type Spread } from "./deviation.ts";
import type { BalanceModel } from "./model.ts";
import { Pcg32 } from "./pcg32.ts";

/** One bar as cut. */
export interface Part {
  readonly momentGMm: Point;
  readonly massG: number;
}

export interface Sampling {
  readonly spread: Spread;
  readonly parts: number;
  readonly seed: number;
}

/** Parts at random within the limits; the same seed gives the same ones. */
export function sampleParts(
  model: BalanceModel,
  thickness: ThicknessSpread,
  { spread, parts, seed }: Sampling,
): readonly Part[] {
  const random = new Pcg32(seed);
  return Array.from({ length: parts }, () => partOf(model, thickness, spread, random));
}

function partOf(model: BalanceModel, thickness: ThicknessSpread, spread: Spread, random: Pcg32): Part {
  const share = thickness.meanShare + thickness.halfRangeShare * deviation(spread, random);
  let { x, y } = model.momentGMm;
  let { massG } = model;
  for (const influence of model.influences) {
    const off = deviation(spread, random);
    x += off * influence.momentGMm.x;
    y += off * influence.momentGMm.y;
    massG += off * influence.massG;
  }
  // Half a turn of directions: a slope against one is a slope along its opposite.
  const slope = thickness.slopeLimit * deviation(spread, random);
  const direction = Math.PI * random.share();
  const [alongX, alongY] = [slope * Math.cos(direction), slope * Math.sin(direction)];
  const { wedge } = model;
  return {
    momentGMm: {
      x: share * x + alongX * wedge.alongX.x + alongY * wedge.alongY.x,
      y: share * y + alongX * wedge.alongX.y + alongY * wedge.alongY.y,
    },
    massG: share * massG,
  };
}
