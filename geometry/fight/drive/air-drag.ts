/** Air drag of what spins, as rough estimates: a bar in its robot drags its own air round. */

/** Of dry air at 20 °C and 1013 hPa, kg/m³ and m²/s. */
export const AIR_KG_PER_M3 = 1.204;
export const AIR_M2_PER_S = 1.51e-5;

/** Drag coefficient of a long plate square to the wind (*Aeronautical Engineer's Data Book*). */
const LONG_PLATE = 1.98;

/**
 * N·m for each (rad/s)² of a bar with two arms of a radius whose edge has a height: ¼·ρ·Cd·h·R⁴. An upper estimate:
 * each arm as a long plate in still air, in front of it and not in the other's wake.
 */
export function barDragNMS2(edgeHeightM: number, radiusM: number, airKgPerM3 = AIR_KG_PER_M3): number {
  return (airKgPerM3 * LONG_PLATE * edgeHeightM * radiusM ** 4) / 4;
}

/** Reynolds number of a disc, ω·R²/ν. */
export function discReynolds(radPerS: number, radiusM: number, airM2PerS = AIR_M2_PER_S): number {
  return (radPerS * radiusM ** 2) / airM2PerS;
}

export interface Air {
  readonly kgPerM3: number;
  readonly m2PerS: number;
}

/** Torque on both faces of a disc in turbulent air, 0.073·ρ·ω²·R⁵·Re^(−1/5). */
export function turbulentDiscNM(radPerS: number, radiusM: number, air: Air): number {
  const re = discReynolds(radPerS, radiusM, air.m2PerS);
  return 0.073 * air.kgPerM3 * radPerS ** 2 * radiusM ** 5 * re ** -0.2;
}

/** Torque on both faces of a disc in laminar air, 0.616·π·ρ·R⁴·√(ν·ω³). */
export function laminarDiscNM(radPerS: number, radiusM: number, air: Air): number {
  return 0.616 * Math.PI * air.kgPerM3 * radiusM ** 4 * Math.sqrt(air.m2PerS * radPerS ** 3);
}
