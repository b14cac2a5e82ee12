/**
 * The units of the language and what they are worth in the base units mm, kg, s, A, rad.
 *
 * The figures come from mathjs. Only the fixed texts of `UNIT_DEFINITIONS` are ever handed to it: text of a file is looked
 * up in the finished table.
 */
import { NUMBER, productDimension, settle } from "./dimension.ts";
import { roundToDigits } from "./number-text.ts";
import type { Dimension, Quantity } from "./quantity.ts";
import type { UnitFactor } from "./tree.ts";
import { UNIT_DEFINITIONS } from "./unit-definitions.ts";
import { unitFactors } from "./unit-factors.ts";

/** What one of a unit is worth: `factor` base units of `dimension`. */
export interface UnitScale {
  readonly factor: number;
  readonly dimension: Dimension;
}

let table: ReadonlyMap<string, UnitScale> | null = null;

/** The finished table, made at the first use: most calls of the tool never need to load it twice. */
function unitTable(): ReadonlyMap<string, UnitScale> {
  table ??= makeTable();
  return table;
}

function makeTable(): ReadonlyMap<string, UnitScale> {
  const factors = unitFactors();
  return new Map(
    Object.entries(UNIT_DEFINITIONS).map(([name, [, dimension]]) => {
      const factor = tidyFactor(factors[name] ?? Number.NaN, dimension);
      return [name, { factor, dimension }];
    }),
  );
}

/**
 * Units other than those of angle are exact decimals by definition (1 in = 25.4 mm) or quotients of such; mathjs
 * reaches some with an error in the last bit. Fifteen digits are what a double keeps of any decimal.
 */
function tidyFactor(factor: number, dimension: Dimension): number {
  return dimension.angle === 0 ? roundToDigits(factor, 15) : factor;
}

/** The unit of this name, or null. */
export function namedUnit(name: string): UnitScale | null {
  return unitTable().get(name) ?? null;
}

/** What a unit as written is worth, such as `kg/m^3`; null where one of its names is not a unit. */
export function unitFactor(unit: { readonly factors: readonly NamedPower[] }): UnitScale | null {
  const [first] = unit.factors;
  if (first !== undefined && unit.factors.length === 1 && first.exponent === 1) return namedUnit(first.name);
  let factor = 1;
  let dimension = NUMBER;
  for (const { name, exponent } of unit.factors) {
    const scale = namedUnit(name);
    if (scale === null) return null;
    factor *= scale.factor ** exponent;
    dimension = productDimension(dimension, scale.dimension, exponent);
  }
  return { factor: tidyFactor(factor, dimension), dimension: settle(dimension) };
}

type NamedPower = Pick<UnitFactor, "name" | "exponent">;

/** Reads a unit from text of our own, such as `kg/m^3` or `kg*m^2/s`; null where it is none. */
export function unitFromText(text: string): UnitScale | null {
  const factors: NamedPower[] = [];
  let sign = 1;
  for (const piece of text.split(/([*/])/)) {
    if (piece === "*" || piece === "/") {
      sign = piece === "*" ? 1 : -1;
      continue;
    }
    const parts = /^\s*([A-Za-z]+)\s*(?:\^\s*([+-]?\d+)\s*)?$/.exec(piece);
    if (parts?.[1] === undefined) return null;
    factors.push({ name: parts[1], exponent: sign * Number(parts[2] ?? 1) });
  }
  return unitFactor({ factors });
}

/** `value` of a unit as a quantity: 0.3 in is 7.62 mm, to the last digit. */
export function quantityFromUnit(value: number, unit: UnitScale): Quantity {
  if (unit.factor === 1) return { value, dimension: unit.dimension };
  const product = value * unit.factor;
  return {
    value: unit.dimension.angle === 0 ? roundToDigits(product, 15) : product,
    dimension: unit.dimension,
  };
}

/** A conversion there and back makes a few roundings to fifteen digits; one digit less is free of them. */
const DIGITS_BACK = 14;

/**
 * A quantity as a number of some unit, to fourteen digits, so that 4200 rpm comes back as 4200. The unit has to be of
 * the quantity's dimension, which is not checked.
 */
export function numberOfUnit(quantity: Quantity, unit: UnitScale): number {
  return unit.factor === 1 ? quantity.value : roundToDigits(quantity.value / unit.factor, DIGITS_BACK);
}
