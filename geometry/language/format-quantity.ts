import { sameDimension, settle } from "./dimension.ts";
import { formatNumber } from "./number-text.ts";
import type { Quantity } from "./quantity.ts";
import { quantityKind } from "./quantity-kinds.ts";
import { numberOfUnit, unitFromText } from "./units.ts";

/**
 * A quantity for messages, such as `12 mm` or `4200 rpm`: in `unit` if that is given and of the quantity's kind, else
 * in the unit that suits its kind and size.
 */
export function formatQuantity(quantity: Quantity, unit?: string | null): string {
  return inUnit(quantity, unit ?? "") ?? inUnit(quantity, suitableUnit(quantity)) ?? bare(quantity);
}

function inUnit(quantity: Quantity, unit: string): string | null {
  const scale = unitFromText(unit);
  if (scale === null || !sameDimension(scale.dimension, settle(quantity.dimension))) return null;
  return `${formatNumber(numberOfUnit(quantity, scale))} ${unit}`;
}

function suitableUnit(quantity: Quantity): string {
  const { unit, smallUnit } = quantityKind(quantity.dimension);
  const scale = unitFromText(unit);
  if (smallUnit === undefined || scale === null || quantity.value === 0) return unit;
  return Math.abs(quantity.value) < smallUnit.below * scale.factor ? smallUnit.unit : unit;
}

/** In base units: a plain number, or a dimension that no unit of the language spells, such as `1/s`. */
function bare(quantity: Quantity): string {
  const { unit } = quantityKind(quantity.dimension);
  return `${formatNumber(quantity.value)} ${unit}`.trimEnd();
}
