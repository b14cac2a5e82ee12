/** What the product says of a bite beside what following phase by phase finds. */
import type { StruckBite } from "../../../geometry/bite/bite.ts";
import type { Survey, SurveyEffort } from "./survey.ts";

/** As shares of the largest radius and of all phases; derived in `effortFor`. */
const DEPTH = 3e-5;
const SHARE = 2e-5;
/** Where a disc touches is known to 1e-8 of the radius, so its direction to so much over the disc's radius. */
const ANGLE_RAD = 1e-4;

/**
 * Between samples the depth is taken as straight where it strays from that by less than DEPTH. Jumps are known to
 * half of a 128th of a turn halved twelve times, 1e-6 of a turn, and few places have more than ten of them.
 */
export const effortFor = (maxRadiusMm: number): SurveyEffort => ({
  phases: 128,
  halvings: 12,
  smoothMm: DEPTH * maxRadiusMm,
});

/** Every figure that both have and that differs, told; empty if none does. */
export function disagreements(maxRadiusMm: number, bite: StruckBite, seen: Survey): string[] {
  const faults: string[] = [];
  const differ = (what: string, own: number, other: number, within: number) => {
    if (!(Math.abs(own - other) <= within)) faults.push(`${what}: ${own}, followed ${other}`);
  };
  const depth = DEPTH * maxRadiusMm;
  differ("largest depth", bite.maxMm, seen.maxMm, depth);
  differ("mean depth", bite.meanMm, seen.meanMm, depth);
  differ("least depth", bite.minMm, seen.minMm, depth);
  differ("median depth", bite.medianMm, seen.quantileMm(0.5), depth);
  differ("a tenth of the depths", bite.tenthMm, seen.quantileMm(0.1), depth);
  differ("nine tenths of the depths", bite.ninetiethMm, seen.quantileMm(0.9), depth);
  differ("square share", bite.squareShare, seen.squareShare, SHARE);
  differ("passed share", bite.passedShare, seen.passedShare, SHARE);
  const strikes = new Map(
    bite.strikes.map((strike) => [`${strike.place.kind} ${strike.place.index}`, strike]),
  );
  for (const name of new Set([...strikes.keys(), ...seen.struck.keys()]))
    differ(`share of ${name}`, strikes.get(name)?.share ?? 0, seen.struck.get(name)?.share ?? 0, SHARE);
  for (const [name, { depthMm, strikeAngleRad }] of strikes) {
    const struck = seen.struck.get(name);
    if (struck === undefined) continue;
    faults.push(...outside(`depth on ${name}`, depthMm, struck.depthsMm, depth));
    faults.push(...outside(`strike angle on ${name}`, strikeAngleRad, struck.strikeAnglesRad, ANGLE_RAD));
  }
  return faults;
}

/** What was seen outside of the range in which it is said to be. */
function outside(
  what: string,
  range: { readonly least: number; readonly most: number },
  seen: readonly number[],
  within: number,
): string[] {
  const [least, most] = [Math.min(...seen), Math.max(...seen)];
  if (least >= range.least - within && most <= range.most + within) return [];
  return [`${what}: ${range.least} to ${range.most}, followed ${least} to ${most}`];
}
