/** The bite while the bar spins up: a fast target does not wait for full spin. */
import type { Bite } from "../bite/bite.ts";
import type { Assessment } from "../figures/assessment.ts";

/** The bite at a part of the spin of the file. */
export interface BiteAtSpin extends Pick<Bite, "maxMm" | "meanMm" | "squareShare" | "toothShare"> {
  readonly rpm: number;
}

const STEPS = 10;

/**
 * The bite at the fastest closing speed of the file at each tenth of its spin, the slowest first. Depth depends on
 * closing speed over spin alone, so a tenth of the spin is ten times the closing speed.
 */
export function biteSpinningUp({ bite, design: { spin } }: Assessment): BiteAtSpin[] {
  if (!bite || !spin) return [];
  return Array.from({ length: STEPS }, (_, i) => {
    const share = (i + 1) / STEPS;
    const { maxMm, meanMm, squareShare, toothShare } = bite.at(bite.toMPerS / share);
    return { rpm: spin.rpm * share, maxMm, meanMm, squareShare, toothShare };
  });
}
