import { massToRemoveG } from "../../figures/balance.ts";
import type { HeavySpot } from "./request.ts";

/** Metal added opposite the heavy side. */
export interface AddedMass {
  readonly massG: number;
  readonly radiusMm: number;
  readonly angleDeg: number;
}

/**
 * The other remedy: what to add at a radius opposite the heavy side. `null` for a balanced bar.
 * Source: equilibrium of static moments.
 */
export function addedMass({ imbalanceGMm, angleDeg }: HeavySpot, radiusMm: number): AddedMass | null {
  if (angleDeg === null || imbalanceGMm === 0 || !(radiusMm > 0)) return null;
  return { massG: massToRemoveG(imbalanceGMm, radiusMm), radiusMm, angleDeg: (angleDeg + 180) % 360 };
}
