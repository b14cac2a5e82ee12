import type { Analysis } from "../../analysis/analyse.ts";
import { LENGTH } from "../../language/dimension.ts";
import { usualUnits } from "../../language/evaluate/usual-unit.ts";

/** What a shop sets a radius and a depth to: a tenth of a millimetre, or five thousandths of an inch. */
export interface ShopSteps {
  readonly lengthMm: number;
  /** Lengths are written in this unit, so many of them a millimetre, with so many decimals. */
  readonly unit: "mm" | "in";
  readonly mmPerUnit: number;
  readonly decimals: number;
}

const METRIC: ShopSteps = { lengthMm: 0.1, unit: "mm", mmPerUnit: 1, decimals: 1 };
const INCH: ShopSteps = { lengthMm: 0.127, unit: "in", mmPerUnit: 25.4, decimals: 3 };

export function shopSteps(inches: boolean): ShopSteps {
  return inches ? INCH : METRIC;
}

const INCH_UNITS: readonly string[] = ["in", "thou", "ft"];

/** Whether the file writes most of its lengths in inches. */
export function speaksInches({ source }: Analysis): boolean {
  return INCH_UNITS.includes(usualUnits(source.tree)(LENGTH));
}
