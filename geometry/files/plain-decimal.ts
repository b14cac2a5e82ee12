/**
 * A number as a plain decimal, the way every reader of a cut file or table understands it: no exponent, no `-0`, no
 * thousands separator, no trailing zeros, and no more digits than the number needs to be read back as itself.
 * @param digits the most digits after the decimal point; what lies beyond is rounded
 * @throws RangeError for NaN and infinities: they have no place in a file, so to get here is a bug
 */
export function plainDecimal(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${value}`);
  const shortest = String(value);
  const text = isPlain(shortest, digits) ? shortest : withoutTrailingZeros(fixed(value, digits));
  return text === "-0" ? "0" : text;
}

function isPlain(text: string, digits: number): boolean {
  if (text.includes("e")) return false;
  const point = text.indexOf(".");
  return point < 0 || text.length - point - 1 <= digits;
}

/** `toFixed` falls back to an exponent from 1e21 on, where every double is a whole number. */
function fixed(value: number, digits: number): string {
  return Math.abs(value) < 1e21 ? value.toFixed(digits) : BigInt(value).toString();
}

function withoutTrailingZeros(text: string): string {
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}
