import { advanceMmPerRad, type BiteCondition } from "./approach.ts";
import { approachLight } from "./approach-light.ts";
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { type DepthDistribution, depthDistribution } from "./depth-distribution.ts";
import { litBy } from "./light.ts";
import { depthReach, type LitDepths, litDepths, squareReach } from "./reach.ts";
import { type Strike, strikesOf } from "./strikes.ts";
import type { Teeth } from "./teeth.ts";

/** The bite of a bar at one closing speed, over a uniform starting phase. */
export interface Bite {
  /** The deepest bite. */
  readonly maxMm: number;
  readonly meanMm: number;
  /** The least is 0 wherever the tip itself can strike. */
  readonly minMm: number;
  /** Half of the strikes go no deeper. */
  readonly medianMm: number;
  /** One strike in ten goes no deeper. */
  readonly tenthMm: number;
  /** Nine strikes in ten go no deeper. */
  readonly ninetiethMm: number;
  /** Share of strikes that are square, 0 to 1. */
  readonly squareShare: number;
  /** Share of strikes that are square and on the face of a tooth, 0 to 1. */
  readonly cleanShare: number;
  /** Share of strikes on a tooth, square or not, its top included. */
  readonly toothShare: number;
  /** Share of phases in which the target comes abreast of the axis and meets nothing. */
  readonly passedShare: number;
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
  return biteAtAdvance(profile, profile.teeth(condition.squareStrikeRad), advanceMmPerRad(condition));
}

/** The distribution of the depth at one closing speed. */
export function depthsOfBite(
  profile: BiteProfile,
  condition: Omit<BiteCondition, "squareStrikeRad">,
): DepthDistribution {
  const advance = leastAdvance(profile, advanceMmPerRad(condition));
  return depthDistribution(profile, advance, litAt(profile, advance));
}

/**
 * The bite at one advance in mm per radian, the teeth found before. Nothing else about the speeds matters.
 */
export function biteAtAdvance(profile: BiteProfile, teeth: Teeth, advanceMm: number): StruckBite {
  return struckAt(profile, teeth, advanceMm, {});
}

/** The same with figures of the caller's own. */
export function struckAt<T extends object>(
  profile: BiteProfile,
  teeth: Teeth,
  advanceMm: number,
  own: T,
): T & StruckBite {
  const advance = leastAdvance(profile, advanceMm);
  const lit = litAt(profile, advance);
  const bite = {
    ...own,
    ...depthsOf(lit),
    ...meanOf(profile, advance, lit),
    ...sharesOf(profile, teeth, advance, lit),
    idealMm: teeth.teeth === 0 ? null : (2 * Math.PI * advanceMm) / teeth.teeth,
  };
  const depths = once(() => depthDistribution(profile, advance, lit));
  return withLazy(bite, {
    medianMm: () => depths().depthAtShare(0.5),
    tenthMm: () => depths().depthAtShare(0.1),
    ninetiethMm: () => depths().depthAtShare(0.9),
    strikes: () => strikesOf(profile, advance, lit),
  });
}

/**
 * Most who ask for a bite look at a few of its figures: those that cost more than all the others are worked out when
 * they are first looked at. They are properties like the rest, so comparing or spreading a bite asks for them.
 */
function withLazy<T extends object, L extends object>(
  known: T,
  lazy: { readonly [K in keyof L]: () => L[K] },
): T & L {
  const properties: PropertyDescriptorMap = {};
  for (const name of Object.keys(lazy) as (keyof L & string)[]) {
    properties[name] = { enumerable: true, get: once(lazy[name]) };
  }
  return Object.defineProperties(known, properties) as T & L;
}

function once<T>(find: () => T): () => T {
  let found: { readonly value: T } | null = null;
  return () => {
    found ??= { value: find() };
    return found.value;
  };
}

/** The deepest bite at one advance, alone: for searches. */
export function maxDepthMm(profile: BiteProfile, advanceMm: number): number {
  return depthsOf(litAt(profile, leastAdvance(profile, advanceMm))).maxMm;
}

/** An advance that is not too small to be told from none. */
export function leastAdvance({ rimMm }: BiteProfile, advanceMm: number): number {
  return Math.max(advanceMm, LEAST_ADVANCE_SHARE * rimMm);
}

/** What is lit at one advance, not below the least, with its depths. */
export function litAt(profile: BiteProfile, advance: number): LitDepths[] {
  return litBy(approachLight(profile, advance)).map((part) => litDepths(profile, part));
}

function depthsOf(lit: readonly LitDepths[]): Pick<Bite, "minMm" | "maxMm"> {
  let [minMm, maxMm] = [Number.POSITIVE_INFINITY, 0];
  for (const { depthFrom, depthTo } of lit) {
    minMm = Math.min(minMm, depthFrom, depthTo);
    maxMm = Math.max(maxMm, depthFrom, depthTo);
  }
  return { minMm, maxMm };
}

function meanOf(profile: BiteProfile, advance: number, lit: readonly LitDepths[]): Pick<Bite, "meanMm"> {
  let depth = 0;
  for (const one of lit) depth += depthReach(profile, advance, one);
  return { meanMm: depth / (2 * Math.PI * advance) };
}

function sharesOf(profile: BiteProfile, teeth: Teeth, advance: number, lit: readonly LitDepths[]) {
  let [square, clean, tooth, passed] = [0, 0, 0, 0];
  for (const { part } of lit) {
    const reach = part.xTo - part.xFrom;
    const squareHere = squareReach(profile, advance, part, teeth.square[part.index] ?? null);
    square += squareHere;
    if (teeth.onTooth[part.index]) clean += squareHere;
    if (teeth.onTooth[part.index] || teeth.onTop[part.index]) tooth += reach;
    if (atRound(profile.pieces, part.index).touch.place === null) passed += reach;
  }
  const period = 2 * Math.PI * advance;
  return {
    squareShare: square / period,
    cleanShare: clean / period,
    toothShare: tooth / period,
    passedShare: passed / period,
  };
}
