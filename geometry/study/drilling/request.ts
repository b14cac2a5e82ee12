/** What is asked for and answered when a bar is balanced by drilling. */
import type { Point } from "../../language/design.ts";
import type { DrillSize } from "./drill-sizes.ts";

/** A static moment and where it points: grams times millimetres, degrees counter-clockwise from +x. */
export interface HeavySpot {
  readonly imbalanceGMm: number;
  /** `null` for a balanced bar. */
  readonly angleDeg: number | null;
}

/** Where holes may lie; angles counter-clockwise from +x, from the first to the second. */
export interface DrillWindow {
  readonly radiusMm?: readonly [least: number, most: number];
  readonly angleDeg?: readonly [from: number, to: number];
}

export interface DrillRequest {
  /** The balance grade wanted, mm/s; `null` or left out for what the file requires or the settings expect. */
  readonly gradeMmPerS?: number | null;
  /** What a balancing stand says; then the imbalance computed from the file is ignored. */
  readonly measured?: HeavySpot | null;
  /** The drills at hand; left out, the usual ones in the units of the file. */
  readonly drills?: readonly DrillSize[];
  /** Through the plate instead of blind. */
  readonly through?: boolean;
  /** What a blind hole leaves below its point; `null` or left out for a fifth of the thickness. */
  readonly floorMm?: number | null;
  readonly window?: DrillWindow;
  /** No more holes than this. */
  readonly mostHoles?: number;
}

/** Share of the thickness left below the point of a blind hole (common practice, no source). */
export const DEFAULT_FLOOR_SHARE = 0.2;
/** More holes than this weaken a bar for what a change of its outline does better. */
export const DEFAULT_MOST_HOLES = 8;

/** One hole as a shop drills it. */
export interface DrilledHole {
  readonly drill: DrillSize;
  /** From the spin axis to the middle of the hole. */
  readonly radiusMm: number;
  /** Counter-clockwise from +x. */
  readonly angleDeg: number;
  readonly centre: Point;
  /** How deep the drill goes with its full diameter; the thickness for a through hole. */
  readonly fullDepthMm: number;
  /** How deep its point goes; `null` for a through hole. */
  readonly pointDepthMm: number | null;
  readonly massG: number;
}

/** The bar after drilling, or as it is with no hole. */
export interface DrilledState extends HeavySpot {
  readonly massKg: number;
  readonly inertiaKgM2: number;
  readonly energyJ: number | null;
  readonly eccentricityMm: number;
  /** e·ω in mm/s; `null` without a spin. */
  readonly gradeMmPerS: number | null;
}

/** Holes and what they come to. */
export interface Drilling {
  readonly holes: readonly DrilledHole[];
  readonly takenG: number;
  readonly after: DrilledState;
  /**
   * What blind holes from one face leave as a couple, in g·mm²: the sum of m·r times the way from the middle of the
   * plate to the middle of the metal taken. Through holes leave none.
   */
  readonly coupleGMm2: number;
}

export type DrillFailure =
  | "file-has-errors"
  | "no-density"
  | "no-spin"
  | "no-drill-fits"
  | "out-of-reach"
  | "new-problems";

/** What the holes are to bring the bar to. */
export interface DrillAim {
  readonly neededMm: number;
  /** Residual imbalance allowed for the bar as it is. */
  readonly neededGMm: number;
  /** As it is told: `G16`, `0.01 mm`. */
  readonly text: string;
}
