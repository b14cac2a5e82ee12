/** What it takes for a wanted depth of bite: a table of round depths. */
import { advanceForDepth, advanceMmPerRad } from "../bite/bite.ts";
import type { Assessment } from "../figures/assessment.ts";

/** What one depth takes; null where no speed or spin gives it. */
export interface WantedDepth {
  readonly depthMm: number;
  /** The lowest closing speed, at the spin of the file. */
  readonly closingMPerS: number | null;
  /** The highest spin, at the fastest closing speed of the file. */
  readonly rpm: number | null;
}

const MOST_ROWS = 6;
const STEPS = [1, 2, 5];
const RPM = 60 / (2 * Math.PI);

/** Round depths in mm or inches up to somewhat more than the bar bites at the fastest closing speed of the file. */
export function wantedDepths({ bite, design: { spin } }: Assessment, perUnit: number): WantedDepth[] {
  const fastest = bite?.curve.at(-1);
  if (!bite || !spin || !fastest || !(fastest.maxMm > 0)) return [];
  const step = roundStep((1.25 * fastest.maxMm) / perUnit / MOST_ROWS);
  return Array.from({ length: MOST_ROWS }, (_, i) => {
    const depthMm = step * (i + 1) * perUnit;
    const advance = depthMm < bite.profile.rimMm ? advanceForDepth(bite.profile, depthMm) : null;
    const perSpeed = advanceMmPerRad({ closingMPerS: 1, radPerS: 1 });
    return {
      depthMm,
      closingMPerS: advance === null ? null : (advance * spin.radPerS) / perSpeed,
      rpm: advance === null ? null : ((fastest.closingMPerS * perSpeed) / advance) * RPM,
    };
  });
}

/** The least of 1, 2 and 5 times a power of ten that is not below. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return power * (STEPS.find((step) => step * power >= least * (1 - 1e-9)) ?? 10);
}
