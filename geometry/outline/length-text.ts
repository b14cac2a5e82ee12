/** Lengths and places as the messages and fixes of the outline write them. */
import type { Located, Point } from "../language/design.ts";
import { LENGTH, sameDimension } from "../language/dimension.ts";
import { formatQuantity } from "../language/format-quantity.ts";
import { formatNumber, roundForFix } from "../language/number-text.ts";
import { unitFromText } from "../language/units.ts";
import { angleOf, norm, wrapped } from "./vector.ts";

/** A length for a message, in mm or in the unit the builder wrote. */
export function lengthText(lengthMm: number, unit: string | null = null): string {
  return formatQuantity({ value: lengthMm, dimension: LENGTH }, unit ?? "mm");
}

/** A length for a fix, in the unit of the value it replaces, with the figures a person would write. */
export interface FixLength {
  readonly text: string;
  readonly lengthMm: number;
}

/** `lengthMm` rounded to a few figures, up or down so that the result stays on the safe side. */
export function fixLength(lengthMm: number, like: Located<number>, side: "up" | "down"): FixLength {
  const { unit, factor } = lengthUnit(like.unit);
  const value = roundForFix(lengthMm / factor, side);
  return { text: `${value} ${unit}`, lengthMm: value * factor };
}

function lengthUnit(written: string | null): { unit: string; factor: number } {
  const scale = unitFromText(written ?? "");
  if (written === null || scale === null || !sameDimension(scale.dimension, LENGTH)) {
    return { unit: "mm", factor: 1 };
  }
  return { unit: written, factor: scale.factor };
}

/** A place for a message. Micrometres are enough to find it, and keep rounding out of sight. */
export function placeText({ x, y }: Point): string {
  return `(${micrometres(x)} mm, ${micrometres(y)} mm)`;
}

function micrometres(value: number): string {
  return formatNumber(Math.round(value * 1e3) / 1e3, 9);
}

/**
 * Decimals of a point that a fix writes: a thousandth of the distance within which two points are one, so that the
 * fix clears the problem.
 */
const FIX_DECIMALS = 9;

/** A point for a fix, cartesian or polar, whichever is shorter to write; both are good to a picometre. */
export function pointText(point: Point): string {
  const cartesian = `(${decimal(point.x)} mm, ${decimal(point.y)} mm)`;
  const degrees = (wrapped(angleOf(point)) * 180) / Math.PI;
  const polar = `(${decimal(norm(point))} mm @ ${decimal(degrees)} deg)`;
  return polar.length < cartesian.length ? polar : cartesian;
}

/** Plain decimals without trailing zeros, never a power of ten and never −0. */
function decimal(value: number): string {
  return value
    .toFixed(FIX_DECIMALS)
    .replace(/\.?0+$/, "")
    .replace(/^-0$/, "0");
}
