import type { Point } from "../../language/design.ts";
import { dot, norm, unit } from "../../outline/vector.ts";
import type { Strike } from "./strike.ts";

export interface Percussion {
  /** Distance of the centre of percussion from the axle, on the side of the centre of mass. */
  readonly radiusM: number;
  /** How much farther out the strike is, on that side: an opponent struck on the other side is farther in than the axle. */
  readonly strikeBeyondM: number;
}

/**
 * The radius of percussion q = I/(m·b), I about the axle, b from the axle to the centre of mass: a blow square to the line
 * from the axle to the centre of mass, at that distance, leaves the axle alone. `null` for a balanced bar, which has
 * none: whatever its tooth gives away, its axle has to take.
 * Source: centre of percussion of a rigid body.
 */
export function percussionOf(
  bar: { readonly massKg: number; readonly inertiaKgM2: number; readonly centreM: Point },
  strike: Strike,
): Percussion | null {
  const armM = norm(bar.centreM);
  if (armM <= BALANCED * norm(strike.atM)) return null;
  const radiusM = bar.inertiaKgM2 / (bar.massKg * armM);
  return { radiusM, strikeBeyondM: dot(strike.atM, unit(bar.centreM)) - radiusM };
}

/** As a share of the strike's radius: what rounding leaves of a balanced bar. */
const BALANCED = 1e-12;
