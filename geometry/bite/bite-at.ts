import { advanceMmPerRad, type BiteCondition } from "./approach.ts";
import { approachLight } from "./approach-light.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { type Lit, litBy } from "./light.ts";
import { depthReach, depthsAt, squareReach } from "./reach.ts";
import { type Strike, strikesOf } from "./strikes.ts";
import { type Teeth, teethOf } from "./teeth.ts";

/** The bite of a bar against an edge at one closing speed, over a uniform starting phase. */
export interface Bite {
  /** The deepest bite. The least is always 0: the tip itself can strike. */
  readonly maxMm: number;
  readonly meanMm: number;
  /** Share of strikes that are square, 0 to 1. */
  readonly squareShare: number;
  /** Share of strikes that are square and on the face of a tooth, 0 to 1. */
  readonly cleanShare: number;
  /** Closing speed over (teeth × turns a second); null without a tooth. Common practice, no source. */
  readonly idealMm: number | null;
}

/** The bite with the places that are struck. */
export interface StruckBite extends Bite {
  readonly strikes: readonly Strike[];
}

/**
 * An advance below this share of the largest radius a radian is taken as this share: the rays are then so
 * flat that their places would drown in the rounding of the radius. What strikes first is the same as a
 * little above it.
 */
const LEAST_ADVANCE_SHARE = 1e-9;

/** The bite at one closing speed, and what strikes. */
export function biteAt(profile: BiteProfile, condition: BiteCondition): StruckBite {
  const teeth = teethOf(profile, condition.squareStrikeRad);
  const advanceMm = advanceMmPerRad(condition);
  const { advance, lit } = litAt(profile, advanceMm);
  return {
    ...depthsOf(profile, teeth, advance, lit),
    idealMm: idealMm(teeth, advanceMm),
    strikes: strikesOf(profile, advance, lit),
  };
}

/**
 * The bite at one advance in mm per radian, the teeth found before. Nothing else about the speeds matters.
 */
export function biteAtAdvance(profile: BiteProfile, teeth: Teeth, advanceMm: number): Bite {
  const { advance, lit } = litAt(profile, advanceMm);
  return { ...depthsOf(profile, teeth, advance, lit), idealMm: idealMm(teeth, advanceMm) };
}

function litAt(profile: BiteProfile, advanceMm: number): { advance: number; lit: Lit[] } {
  const advance = Math.max(advanceMm, LEAST_ADVANCE_SHARE * profile.maxRadiusMm);
  return { advance, lit: litBy(approachLight(profile, advance)) };
}

function idealMm({ teeth }: Teeth, advanceMm: number): number | null {
  return teeth === 0 ? null : (2 * Math.PI * advanceMm) / teeth;
}

function depthsOf(
  profile: BiteProfile,
  teeth: Teeth,
  advance: number,
  lit: readonly Lit[],
): Omit<Bite, "idealMm"> {
  const period = 2 * Math.PI * advance;
  let [maxMm, depth, square, clean] = [0, 0, 0, 0];
  for (const part of lit) {
    const depths = depthsAt(profile, part);
    const squareHere = squareReach(profile, advance, part, teeth.square[part.index] ?? null);
    maxMm = Math.max(maxMm, depths[0], depths[1]);
    depth += depthReach(profile, advance, part, depths);
    square += squareHere;
    if (teeth.onTooth[part.index]) clean += squareHere;
  }
  return {
    maxMm,
    meanMm: depth / period,
    squareShare: square / period,
    cleanShare: clean / period,
  };
}
