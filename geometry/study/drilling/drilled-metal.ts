/**
 * What a drill takes. A blind hole is a cylinder down to where the drill has its full diameter and the cone of the
 * drill's point below it; a through hole is a cylinder through the plate. Lengths in mm, from the face drilled.
 */

/** Angle of the drill's point: 118° for drills of general use (common practice; special points for hard plate differ). */
export const POINT_ANGLE_DEG = 118;

const HALF_POINT_RAD = (POINT_ANGLE_DEG * Math.PI) / 360;

/** How far the point goes ahead of the full diameter: the height of the cone, 0.3004 diameters. */
export function pointLengthMm(diameterMm: number): number {
  return diameterMm / 2 / Math.tan(HALF_POINT_RAD);
}

/** What is missing after drilling, about the axis of the hole. */
export interface DrilledMetal {
  readonly volumeMm3: number;
  /** Of the metal taken, below the face. */
  readonly centroidDepthMm: number;
  /** ∫s² dV about the hole's own axis, in mm⁵. */
  readonly ownInertiaMm5: number;
}

/** A cylinder through the plate. Source: handbook formulas, V = πr²t, ½mr² about the axis. */
export function throughMetal(diameterMm: number, thicknessMm: number): DrilledMetal {
  const radius = diameterMm / 2;
  const volumeMm3 = Math.PI * radius * radius * thicknessMm;
  return { volumeMm3, centroidDepthMm: thicknessMm / 2, ownInertiaMm5: (volumeMm3 * radius * radius) / 2 };
}

/**
 * A cylinder as deep as the full diameter, and the cone of the point below it.
 * Source: handbook formulas; a cone has V = πr²h/3, its centroid h/4 from the base, and 3/10·mr² about its axis.
 */
export function blindMetal(diameterMm: number, fullDepthMm: number): DrilledMetal {
  const radius = diameterMm / 2;
  const point = pointLengthMm(diameterMm);
  const cylinder = Math.PI * radius * radius * fullDepthMm;
  const cone = (Math.PI * radius * radius * point) / 3;
  const volumeMm3 = cylinder + cone;
  return {
    volumeMm3,
    centroidDepthMm: (cylinder * (fullDepthMm / 2) + cone * (fullDepthMm + point / 4)) / volumeMm3,
    ownInertiaMm5: radius * radius * (cylinder / 2 + 0.3 * cone),
  };
}

/** How deep the full diameter goes where so much metal is to be taken; negative where the cone alone is more. */
export function fullDepthForMm(diameterMm: number, volumeMm3: number): number {
  const area = (Math.PI * diameterMm * diameterMm) / 4;
  return volumeMm3 / area - pointLengthMm(diameterMm) / 3;
}
