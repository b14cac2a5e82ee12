/** What a bar carries while it spins. The spin is a magnitude in rad/s. Source of all: mechanics of a rigid body. */

/** Speed of the farthest point of the outline, ω·R. */
export function tipSpeedMPerS(maxRadiusMm: number, radPerS: number): number {
  return (maxRadiusMm / 1000) * radPerS;
}

/** Kinetic energy, ½·I·ω². */
export function energyJ(inertiaKgM2: number, radPerS: number): number {
  return (inertiaKgM2 * radPerS * radPerS) / 2;
}

/** Angular momentum, I·ω. */
export function angularMomentumKgM2PerS(inertiaKgM2: number, radPerS: number): number {
  return inertiaKgM2 * radPerS;
}

/** The force that turns with the bar and shakes its axle, U·ω²: the centripetal force of the mass at its centroid. */
export function imbalanceForceN(imbalanceGMm: number, radPerS: number): number {
  return imbalanceGMm * KG_M_PER_G_MM * radPerS * radPerS;
}

const KG_M_PER_G_MM = 1e-6;
