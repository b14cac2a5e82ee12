import { polarSecondMomentMm4 } from "./second-moments.ts";
import type { Section } from "./section.ts";

/** What the plate of a section weighs and how it would shake, the spin axis being (0, 0). */
export interface MassProperties {
  readonly massKg: number;
  /** About the spin axis. */
  readonly inertiaKgM2: number;
  /** Distance of the centroid from the spin axis. */
  readonly eccentricityMm: number;
  /** Mass × eccentricity. */
  readonly imbalanceGMm: number;
  /** Direction of the heavy side, counter-clockwise from +x, 0 ≤ angle < 360; `null` for a balanced bar. */
  readonly imbalanceDeg: number | null;
}

/**
 * An eccentricity below this share of the largest radius is what rounding leaves of a balanced bar (thousands of
 * segments leave less than 1e-13): it has no heavy side. For a bar of 200 mm it is a fifth of a nanometre.
 */
const ROUNDING_OF_CENTROID = 1e-12;

/**
 * Mass properties of a flat plate of even thickness; `null` for a section without area.
 * Source: density times the section's integrals (m = ρtA, I = ρt(∫x² dA + ∫y² dA), U = m·e).
 */
export function massOf(section: Section, thicknessMm: number, densityKgPerM3: number): MassProperties | null {
  const { areaMm2, centroidMm, secondMomentsMm4, maxRadiusMm } = section;
  if (!centroidMm) return null;
  const massKg = areaMm2 * thicknessMm * densityKgPerM3 * M3_PER_MM3;
  const inertiaKgM2 = polarSecondMomentMm4(secondMomentsMm4) * thicknessMm * densityKgPerM3 * M5_PER_MM5;
  const eccentricityMm = Math.hypot(centroidMm.x, centroidMm.y);
  const balanced = eccentricityMm <= ROUNDING_OF_CENTROID * maxRadiusMm;
  return {
    massKg,
    inertiaKgM2,
    eccentricityMm,
    imbalanceGMm: massKg * G_PER_KG * eccentricityMm,
    imbalanceDeg: balanced ? null : directionDeg(centroidMm.x, centroidMm.y),
  };
}

const M3_PER_MM3 = 1e-9;
const M5_PER_MM5 = 1e-15;
const G_PER_KG = 1000;

function directionDeg(x: number, y: number): number {
  const angleDeg = (Math.atan2(y, x) * 180) / Math.PI;
  const turned = angleDeg < 0 ? angleDeg + 360 : angleDeg;
  // A hair below +x rounds up to 360, which is 0.
  return turned >= 360 ? 0 : turned + 0;
}
