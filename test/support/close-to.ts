import { expect } from "vitest";

/**
 * Expect a number within a relative tolerance. Where the expected value is 0, or a small difference of large parts,
 * `scale` says how large the parts are.
 */
export function expectClose(
  actual: number | undefined,
  expected: number,
  relative: number,
  scale = Math.abs(expected),
): void {
  const error = Math.abs((actual ?? Number.NaN) - expected);
  expect(error <= relative * scale, `${actual} is not ${expected} within ${relative} of ${scale}`).toBe(true);
}
