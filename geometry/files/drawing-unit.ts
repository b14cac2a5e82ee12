import type { UnitSystem } from "../figures/present.ts";

/** The unit that the coordinates of a drawing are written in. The model itself is always in mm. */
export type DrawingUnit = UnitSystem;

/** By definition, since the international agreement of 1959. */
const MM_PER_INCH = 25.4;

/** How many mm one unit of the drawing is. */
export function mmPerUnit(unit: DrawingUnit): number {
  return unit === "in" ? MM_PER_INCH : 1;
}

/** A drawing of twelve decimals resolves 1e-12 mm or 2.54e-11 mm: finer than the 1e-9 mm that the figures need. */
export const COORDINATE_DIGITS = 12;
