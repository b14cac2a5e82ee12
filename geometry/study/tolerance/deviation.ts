import type { Pcg32 } from "./pcg32.ts";

/**
 * How a value lies within its limits. `uniform`: anywhere between them is as likely. `normal`: about the middle, the
 * limits at two standard deviations, so that one part in twenty-two is beyond them.
 */
export const SPREADS = ["uniform", "normal"] as const;
export type Spread = (typeof SPREADS)[number];

/** The variance of a deviation whose limits are ±1: 1/3, or ¼ for limits at 2σ. */
export function unitVariance(spread: Spread): number {
  return spread === "uniform" ? 1 / 3 : 1 / 4;
}

/** A deviation whose limits are ±1. */
export function deviation(spread: Spread, random: Pcg32): number {
  if (spread === "uniform") return 2 * random.share() - 1;
  // Box and Muller 1958; the second of the pair is not kept, so that each deviation takes the same two numbers.
  const radius = Math.sqrt(-2 * Math.log(random.share()));
  return (radius * Math.cos(2 * Math.PI * random.share())) / 2;
}
