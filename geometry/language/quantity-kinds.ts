/** What kinds of value are called, how one is written, and in which units values of the kind are shown. */
import {
  ACCELERATION,
  ANGLE,
  ANGULAR_MOMENTUM,
  ANGULAR_SPEED,
  AREA,
  CHARGE,
  CURRENT,
  DENSITY,
  ENERGY,
  FORCE,
  FREQUENCY,
  IMBALANCE,
  INERTIA,
  LENGTH,
  MASS,
  NUMBER,
  POWER,
  RESISTANCE,
  SPEED,
  STRESS,
  sameDimension,
  settle,
  TIME,
  VOLTAGE,
  VOLUME,
} from "./dimension.ts";
import type { Dimension } from "./quantity.ts";

export interface QuantityKind {
  readonly dimension: Dimension;
  /** With its article, such as "a length". */
  readonly name: string;
  /** A value as a builder would write it, such as `12 mm`. */
  readonly example: string;
  /** The unit to write or show such values in. */
  readonly unit: string;
  /** The unit for values below `below`, in numbers of `unit`. */
  readonly smallUnit?: { readonly unit: string; readonly below: number };
}

const KINDS: readonly QuantityKind[] = [
  { dimension: NUMBER, name: "a plain number", example: "4", unit: "" },
  { dimension: LENGTH, name: "a length", example: "12 mm", unit: "mm" },
  { dimension: ANGLE, name: "an angle", example: "45 deg", unit: "deg" },
  { dimension: SPEED, name: "a speed", example: "3 m/s", unit: "m/s" },
  { dimension: ANGULAR_SPEED, name: "a speed of rotation", example: "4200 rpm", unit: "rpm" },
  {
    dimension: MASS,
    name: "a mass",
    example: "1.6 kg",
    unit: "kg",
    smallUnit: { unit: "g", below: 0.1 },
  },
  { dimension: AREA, name: "an area", example: "50 mm^2", unit: "mm^2" },
  { dimension: VOLUME, name: "a volume", example: "800 mm^3", unit: "mm^3" },
  { dimension: DENSITY, name: "a density", example: "7850 kg/m^3", unit: "kg/m^3" },
  { dimension: STRESS, name: "a stress", example: "1200 MPa", unit: "MPa" },
  { dimension: ENERGY, name: "an energy", example: "900 J", unit: "J" },
  { dimension: POWER, name: "a power", example: "250 W", unit: "W" },
  { dimension: FORCE, name: "a force", example: "80 N", unit: "N" },
  { dimension: TIME, name: "a time", example: "4 s", unit: "s", smallUnit: { unit: "ms", below: 0.1 } },
  { dimension: ACCELERATION, name: "an acceleration", example: "9.81 m/s^2", unit: "m/s^2" },
  { dimension: INERTIA, name: "a moment of inertia", example: "0.02 kg*m^2", unit: "kg*m^2" },
  { dimension: ANGULAR_MOMENTUM, name: "an angular momentum", example: "8 kg*m^2/s", unit: "kg*m^2/s" },
  { dimension: IMBALANCE, name: "an imbalance", example: "120 g*mm", unit: "g*mm" },
  { dimension: FREQUENCY, name: "a rate per second", example: "1/(2 s)", unit: "1/s" },
  { dimension: VOLTAGE, name: "a voltage", example: "22.2 V", unit: "V" },
  { dimension: CURRENT, name: "a current", example: "60 A", unit: "A" },
  {
    dimension: RESISTANCE,
    name: "a resistance",
    example: "40 mohm",
    unit: "ohm",
    smallUnit: { unit: "mohm", below: 1 },
  },
  { dimension: CHARGE, name: "a charge", example: "3.3 Ah", unit: "Ah" },
];

/** The kind of a dimension; one that has no name of its own is told by its units. */
export function quantityKind(dimension: Dimension): QuantityKind {
  const settled = settle(dimension);
  const known = KINDS.find((kind) => sameDimension(kind.dimension, settled));
  if (known !== undefined) return known;
  const unit = baseUnits(settled);
  return { dimension: settled, name: `a value in ${unit}`, example: `1 ${unit}`, unit };
}

/** "a length", "an angle", "a speed". */
export function dimensionName(dimension: Dimension): string {
  return quantityKind(dimension).name;
}

/** "a length such as 12 mm": what to expect, with a value as a builder would write it. */
export function expectedPhrase(dimension: Dimension): string {
  const { name, example } = quantityKind(dimension);
  return `${name} such as ${example}`;
}

/** A dimension spelled in base units, such as `kg*mm^2/s^3` or `1/s^2`. */
function baseUnits(dimension: Dimension): string {
  const powers: readonly (readonly [string, number])[] = [
    ["kg", dimension.mass],
    ["mm", dimension.length],
    ["A", dimension.current],
    ["rad", dimension.angle],
    ["s", dimension.time],
  ];
  const write = ([unit, exponent]: readonly [string, number]): string =>
    Math.abs(exponent) === 1 ? unit : `${unit}^${Number(Math.abs(exponent).toPrecision(6))}`;
  const above = powers.filter(([, exponent]) => exponent > 0).map(write);
  const below = powers.filter(([, exponent]) => exponent < 0).map(write);
  return [above.join("*") || "1", ...below].join("/");
}
