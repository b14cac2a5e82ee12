import { expect } from "vitest";

/**
 * Expect a number to be what a source prints, such as `"1 413.7167"`: within half a unit of the last digit printed, or
 * within a whole one where the source cut the rest off instead of rounding.
 */
export function expectPrinted(
  actual: number | undefined,
  printed: string,
  unitsOfLastDigit: 0.5 | 1 = 0.5,
): void {
  const digits = printed.replaceAll(" ", "");
  const decimals = digits.split(".")[1]?.length ?? 0;
  const error = Math.abs((actual ?? Number.NaN) - Number(digits));
  const allowed = unitsOfLastDigit * 10 ** -decimals + 4 * Number.EPSILON * Math.abs(Number(digits));
  expect(error <= allowed, `${actual} is not printed as ${printed}`).toBe(true);
}
