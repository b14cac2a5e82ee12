/**
 * What each unit is worth in the base units mm, kg, s, A, rad, worked out by mathjs.
 *
 * A bundle carries the finished numbers in place of this module, and so no mathjs: `scripts/lighter-modules.ts`.
 */
import { createUnitConverter } from "./mathjs-units.ts";
import type { Dimension } from "./quantity.ts";
import { UNIT_DEFINITIONS } from "./unit-definitions.ts";

/** By the name of the unit, as mathjs gives it: some with an error in the last bit. */
export function unitFactors(): Readonly<Record<string, number>> {
  const convert = createUnitConverter();
  const factors = Object.entries(UNIT_DEFINITIONS).map(
    ([name, [text, dimension]]) => [name, convert(text, baseUnitText(dimension))] as const,
  );
  return Object.fromEntries(factors);
}

/** A dimension in mathjs's words, such as `mm^2 kg^1 s^-2`. mathjs throws when a definition is of another kind. */
function baseUnitText(dimension: Dimension): string {
  const bases = [
    ["mm", dimension.length],
    ["kg", dimension.mass],
    ["s", dimension.time],
    ["A", dimension.current],
    ["rad", dimension.angle],
  ] as const;
  return bases.flatMap(([name, exponent]) => (exponent === 0 ? [] : [`${name}^${exponent}`])).join(" ");
}
