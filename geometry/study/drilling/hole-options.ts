import type { DrillSize } from "./drill-sizes.ts";
import { blindMetal, pointLengthMm, throughMetal } from "./drilled-metal.ts";

/** One drill and how deep it may go: `leastSteps` to `mostSteps` steps, each taking the same mass. */
export interface HoleOption {
  readonly drill: DrillSize;
  /** From the middle of the hole to the nearest edge, at least. */
  readonly roomMm: number;
  readonly leastSteps: number;
  readonly mostSteps: number;
  /** Mass at no step at all: the cone of a blind hole, all of a through hole. */
  readonly baseG: number;
  readonly perStepG: number;
  /** Mass at the deepest. */
  readonly mostG: number;
}

export interface Plate {
  readonly thicknessMm: number;
  readonly gPerMm3: number;
  readonly bridgeMm: number;
}

/** Shallower than this at full diameter, a depth cannot be measured well (common practice, no source). */
const LEAST_FULL_DEPTH_MM = 0.5;

/** Holes through the plate: each drill takes one mass. */
export function throughOptions(drills: readonly DrillSize[], plate: Plate): readonly HoleOption[] {
  return drills.map((drill) => {
    const baseG = throughMetal(drill.diameterMm, plate.thicknessMm).volumeMm3 * plate.gPerMm3;
    const roomMm = drill.diameterMm / 2 + plate.bridgeMm;
    return { drill, roomMm, leastSteps: 0, mostSteps: 0, baseG, perStepG: 0, mostG: baseG };
  });
}

/** Blind holes whose point stays `floorMm` above the far face; drills too thick for that are left out. */
export function blindOptions(
  drills: readonly DrillSize[],
  plate: Plate,
  floorMm: number,
  stepMm: number,
): readonly HoleOption[] {
  const { gPerMm3, bridgeMm, thicknessMm } = plate;
  return drills.flatMap((drill): HoleOption[] => {
    const { diameterMm } = drill;
    const deepestMm = thicknessMm - floorMm - pointLengthMm(diameterMm);
    const leastSteps = Math.ceil(LEAST_FULL_DEPTH_MM / stepMm - ROUNDING);
    const mostSteps = Math.floor(deepestMm / stepMm + ROUNDING);
    if (mostSteps < leastSteps) return [];
    const baseG = blindMetal(diameterMm, 0).volumeMm3 * gPerMm3;
    const perStepG =
      (blindMetal(diameterMm, stepMm).volumeMm3 - blindMetal(diameterMm, 0).volumeMm3) * gPerMm3;
    const roomMm = diameterMm / 2 + bridgeMm;
    return [{ drill, roomMm, leastSteps, mostSteps, baseG, perStepG, mostG: baseG + perStepG * mostSteps }];
  });
}

/** A depth of so many steps is that, whichever way the division was rounded. */
const ROUNDING = 1e-9;
