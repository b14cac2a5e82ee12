/** Numbers as people write them. */

/**
 * Rounds to so many significant digits. Fifteen is the most that a double keeps of every decimal, so rounding to
 * fifteen takes away errors of the last bit and nothing that was written.
 */
export function roundToDigits(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}

/** Significant digits of numbers in messages: finer than any shop works, and free of 0.30000000000000004. */
const MESSAGE_DIGITS = 6;

/** A number for messages: up to six digits, no trailing zeros, powers of ten only where plain digits would not do. */
export function formatNumber(value: number, digits: number = MESSAGE_DIGITS): string {
  return String(roundToDigits(value, digits) + 0);
}

/** Significant digits of a value that a fix writes, as a person would choose it: 13.9, 0.124, 133. */
const FIX_DIGITS = 3;

/**
 * A value as a person would write it, three digits, rounded so that it stays on the safe side: never below `value`
 * for "up", never above it for "down". A value that has three digits already stays as it is.
 */
export function roundForFix(value: number, direction: "up" | "down"): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const exponent = Math.floor(Math.log10(Math.abs(value))) - (FIX_DIGITS - 1);
  const nearest = Math.round(value / 10 ** exponent);
  const candidates = [nearest, nearest + (direction === "up" ? 1 : -1)].map((n) =>
    Number(`${n}e${exponent}`),
  );
  return candidates.find((rounded) => (direction === "up" ? rounded >= value : rounded <= value)) ?? value;
}
