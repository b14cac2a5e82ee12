import type { CarriedBar } from "../fight/impact/scene.ts";
import type { Outline } from "../outline/segment.ts";
import { farthestFromAxis } from "../outline/segment-geometry.ts";
import { angleOf, wrapped } from "../outline/vector.ts";
import type { Assessment } from "./assessment.ts";

/** The bar as its robot carries it; null without mass or spin. */
export function carriedBar({
  design,
  outline,
  section,
  mass,
}: Pick<Assessment, "design" | "outline" | "section" | "mass">): CarriedBar | null {
  const { spin } = design;
  if (!outline || !section?.centroidMm || !mass || !spin) return null;
  const ahead = angleOf(section.centroidMm) - tipAngleRad(outline);
  return {
    massKg: mass.massKg,
    inertiaKgM2: mass.inertiaKgM2,
    radPerS: spin.radPerS,
    tipRadiusM: section.maxRadiusMm / 1000,
    eccentricityM: mass.eccentricityMm / 1000,
    heavyAheadRad: wrapped(spin.direction === "ccw" ? ahead : -ahead),
  };
}

/** Of the farthest point, the first of equals. */
function tipAngleRad({ outer }: Outline): number {
  const tips = outer.segments.map(farthestFromAxis);
  const tip = tips.reduce((best, other) => (other.distanceMm > best.distanceMm ? other : best));
  return angleOf(tip.point);
}
