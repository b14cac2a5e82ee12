import type { TextRange } from "../../language/text.ts";
import { findMaterial } from "../../materials/table.ts";
import type { Hover, HoverPlace } from "../hover.ts";
import { materialLines } from "../material-lines.ts";

/** What the table says of a material, and what the file says instead. */
export function materialHover({ values }: HoverPlace, name: string, range: TextRange): Hover | null {
  const material = findMaterial(name);
  if (material === null) return null;
  const { densityKgPerM3, yieldMPa } = values.design;
  const overridden = [
    ...(densityKgPerM3 === null || densityKgPerM3 === material.densityKgPerM3.value
      ? []
      : [`The file sets the density to ${densityKgPerM3} kg/m³.`]),
    ...(yieldMPa === null || yieldMPa === material.yieldMPa.value
      ? []
      : [`The file sets the yield strength to ${yieldMPa} MPa.`]),
  ];
  return { range, lines: [...materialLines(material), ...overridden] };
}
