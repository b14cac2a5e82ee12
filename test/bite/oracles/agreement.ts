/** What the product says of a bite beside what following phase by phase finds. */
import type { StruckBite } from "../../../geometry/bite/bite.ts";
import type { Loop } from "../../../geometry/outline/segment.ts";
import type { Survey, SurveyEffort } from "./survey.ts";

/**
 * Twelve halvings of half of a 128th of a turn: a jump is known to 1e-6 of a turn. Smoothness leaves less than
 * the 3e-6 of the radius that is asked for.
 */
export const effortFor = (maxRadiusMm: number): SurveyEffort => ({
  phases: 128,
  halvings: 12,
  smoothMm: 3e-5 * maxRadiusMm,
});

/** As a share of the largest radius, and of all phases. */
const DEPTH = 1e-5;
const SHARE = 2e-5;

/** Every figure that both have and that differs, told; empty if none does. */
export function disagreements(outer: Loop, maxRadiusMm: number, bite: StruckBite, seen: Survey): string[] {
  const faults: string[] = [];
  const differ = (what: string, own: number, other: number, within: number) => {
    if (!(Math.abs(own - other) <= within)) faults.push(`${what}: ${own}, followed ${other}`);
  };
  differ("largest depth", bite.maxMm, seen.maxMm, DEPTH * maxRadiusMm);
  differ("mean depth", bite.meanMm, seen.meanMm, DEPTH * maxRadiusMm);
  differ("square share", bite.squareShare, seen.squareShare, SHARE);
  outer.segments.forEach((_, segment) => {
    const own =
      bite.strikes.find(({ place }) => place.kind === "segment" && place.index === segment)?.share ?? 0;
    differ(`share of segment ${segment}`, own, seen.shares.get(segment) ?? 0, SHARE);
  });
  return faults;
}
