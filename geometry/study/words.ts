/**
 * Values in the words of a call or of a form, read as a file reads them. `name` is what the asker calls the place, such as
 * `--grade` or `Grade`: messages begin with it.
 */
import type { Dimension } from "../language/quantity.ts";
import { quantityOfText } from "../language/quantity-text.ts";

export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string };

export function wrong(message: string): Read<never> {
  return { ok: false, message };
}

export function found<T>(value: T): Read<T> {
  return { ok: true, value };
}

/** A value with its unit, in the base unit of its kind: mm, kg, s, rad. */
export function readValue(name: string, text: string, dimension: Dimension): Read<number> {
  const read = quantityOfText(text, dimension);
  return read.ok ? found(read.quantity.value) : wrong(`${name}: ${read.message}`);
}

/** A value that is not below nothing. */
export function readSize(name: string, text: string, dimension: Dimension): Read<number> {
  const read = readValue(name, text, dimension);
  return read.ok && read.value < 0 ? wrong(`${name} is a length of at least 0 mm.`) : read;
}

/** `40 mm to 90 mm`. */
export function readRange(
  name: string,
  text: string,
  dimension: Dimension,
  example: string,
): Read<readonly [number, number]> {
  const [from, to, ...more] = text.split(/\bto\b/);
  if (from === undefined || to === undefined || more.length > 0)
    return wrong(`${name} is a range such as "${example}".`);
  const ends = [readValue(name, from, dimension), readValue(name, to, dimension)] as const;
  if (!ends[0].ok) return ends[0];
  return ends[1].ok ? found([ends[0].value, ends[1].value] as const) : ends[1];
}

/** `G16`, or `16`. */
export function readGrade(name: string, text: string): Read<number> {
  const value = /^G?(\d+(?:\.\d+)?)$/.exec(text.trim())?.[1];
  if (value === undefined || Number(value) === 0)
    return wrong(`${name} is a balance grade such as G16, not "${text.trim()}".`);
  return found(Number(value));
}

export function readWhole(name: string, text: string, least: number, most: number): Read<number> {
  const count = /^\d+$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (count >= least && count <= most) return found(count);
  return wrong(`${name} is a whole number from ${least} to ${most}, not "${text.trim()}".`);
}

/** Takes values one after the other and keeps the first message of what is wrong. */
export class Reading {
  message: string | null = null;

  take<T>(read: Read<T>): T | null {
    if (read.ok) return read.value;
    this.message ??= read.message;
    return null;
  }

  /** What was asked for, unless something was wrong. */
  done<T>(value: T): Read<T> {
    return this.message === null ? found(value) : wrong(this.message);
  }
}
