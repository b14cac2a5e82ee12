/** Values in the words of a call, read as a file reads them. */
import type { Dimension } from "../../geometry/language/quantity.ts";
import { quantityOfText } from "../../geometry/language/quantity-text.ts";
import { oneLine } from "./problem-line.ts";
import { CallError } from "./world.ts";

/** A value with its unit, in the base unit of its kind: mm, kg, s, rad. */
export function valueOfText(option: string, text: string, dimension: Dimension): number {
  const read = quantityOfText(text, dimension);
  if (!read.ok) throw new CallError(`${option}: ${oneLine(read.message)}`);
  return read.quantity.value;
}

/** `40 mm to 90 mm`. */
export function rangeOfText(
  option: string,
  text: string,
  dimension: Dimension,
  example: string,
): readonly [number, number] {
  const [from, to, ...more] = text.split(/\bto\b/);
  if (from === undefined || to === undefined || more.length > 0)
    throw new CallError(`${option} is a range such as "${example}".`);
  return [valueOfText(option, from, dimension), valueOfText(option, to, dimension)];
}

/** `G16`, or `16`. */
export function gradeOfText(option: string, text: string): number {
  const value = /^G?(\d+(?:\.\d+)?)$/.exec(text.trim())?.[1];
  if (value === undefined || Number(value) === 0)
    throw new CallError(`${option} is a balance grade such as G16, not "${text}".`);
  return Number(value);
}

export function wholeOfText(option: string, text: string, least: number, most: number): number {
  const count = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (!(count >= least && count <= most))
    throw new CallError(`${option} is a whole number from ${least} to ${most}, not "${text}".`);
  return count;
}
