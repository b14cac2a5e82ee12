/** Values in the units that people think in: millimetres and inches, rpm and radians a second. */
import { fixed, presentMeasure } from "../figures/present.ts";
import {
  ANGLE,
  ANGULAR_SPEED,
  AREA,
  DENSITY,
  ENERGY,
  FORCE,
  IMBALANCE,
  INERTIA,
  LENGTH,
  MASS,
  POWER,
  SPEED,
  STRESS,
  sameDimension,
  VOLUME,
} from "../language/dimension.ts";
import { formatQuantity } from "../language/format-quantity.ts";
import type { Dimension, Quantity } from "../language/quantity.ts";

/** The units beside the usual one in which a kind of value is shown. */
const OTHER_UNITS: readonly (readonly [Dimension, readonly string[]])[] = [
  [LENGTH, ["in"]],
  [ANGLE, ["rad"]],
  [SPEED, ["km/h", "mph"]],
  [ANGULAR_SPEED, ["rad/s"]],
  [MASS, ["lb"]],
  [AREA, ["in^2"]],
  [VOLUME, ["in^3"]],
  [DENSITY, ["lb/in^3"]],
  [STRESS, ["ksi"]],
  [ENERGY, ["lbf*ft"]],
  [FORCE, ["lbf"]],
  [POWER, ["hp"]],
  [INERTIA, ["lb*in^2"]],
  [IMBALANCE, ["oz*in"]],
];

/** A value in its usual unit and in the others that are in use: `130 mm`, `5.11811 in`. */
export function valueTexts(quantity: Quantity): readonly string[] {
  const others = OTHER_UNITS.find(([dimension]) => sameDimension(dimension, quantity.dimension))?.[1] ?? [];
  return [formatQuantity(quantity), ...others.map((unit) => formatQuantity(quantity, unit))];
}

/** The same in one text: `130 mm = 5.11811 in`. */
export function valueText(quantity: Quantity): string {
  return valueTexts(quantity).join(" = ");
}

/** A length in mm as text, in mm and inches. */
export function lengthText(lengthMm: number): string {
  const [mm, inches] = (["mm", "in"] as const).map((system) => presentMeasure("length", lengthMm, system));
  return `${mm?.text} mm (${inches?.text} in)`;
}

/** An angle in rad as text, in degrees. */
export function angleText(angleRad: number): string {
  return `${presentMeasure("angle", (angleRad * 180) / Math.PI, "mm").text}°`;
}

/** A place as text, to a thousandth of a millimetre. */
export function placeText({ x, y }: { readonly x: number; readonly y: number }): string {
  return `(${fixed(x, 3)} mm, ${fixed(y, 3)} mm)`;
}
