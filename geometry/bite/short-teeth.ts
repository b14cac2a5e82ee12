import type { Point } from "../language/design.ts";
import { approachLight } from "./approach-light.ts";
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { pointOn } from "./given.ts";
import { litBy } from "./light.ts";
import type { Place } from "./offered.ts";
import { climbTo, peaksOf, slopesOf } from "./teeth.ts";

/** A tooth that is not as long as the longest. */
export interface ShortTooth {
  readonly point: Point;
  readonly place: Place;
  /** How much shorter than the longest. */
  readonly shortMm: number;
  /** The advance, in mm per radian, from which it strikes at all; null if it does not up to the one asked for. */
  readonly fromAdvanceMm: number | null;
}

/**
 * A tip at this share of the largest radius is meant to work as a tooth; what is shorter by more may be a tail or a
 * counterweight with a square side (common practice, no source).
 */
const MEANT_SHARE = 0.9;
const JUST_ABOVE = 1e-6;
const STEP = 1.08;

/** Where there are more, they are not looked at: on a wheel of teeth one that stands out is meant to. */
const MOST_TOLD = 6;

/**
 * The teeth with a square face that the longer ones shade, for an edge that comes straight at the axis: the shortest
 * ones first; none where they are many.
 */
export function shortTeeth(
  profile: BiteProfile,
  squareStrikeRad: number,
  mostAdvanceMm: number,
): ShortTooth[] {
  const { pieces, rimMm } = profile;
  const { square, tips } = profile.teeth(squareStrikeRad);
  if (tips.length === 0) return [];
  const longest = new Set(tips);
  const slope = slopesOf(profile);
  const short = peaksOf(slope)
    .filter((tip) => !longest.has(tip) && atRound(pieces, tip).alongTo >= MEANT_SHARE * rimMm)
    .map((tip) => ({ tip, climb: climbTo(slope, tip) }))
    .filter(({ climb }) => climb.some((i) => square[i] !== null))
    .sort((a, b) => atRound(pieces, a.tip).alongTo - atRound(pieces, b.tip).alongTo);
  if (short.length > MOST_TOLD) return [];
  return short.flatMap(({ tip, climb }): ShortTooth[] => {
    const piece = atRound(pieces, tip);
    const point = pointOn(profile, piece, piece.to);
    const { place } = piece.touch;
    if (point === null || place === null) return [];
    const shortMm = rimMm - piece.alongTo;
    const fromAdvanceMm = firstStruck(profile, climb, tip, shortMm, tips, mostAdvanceMm);
    return [{ point, place, shortMm, fromAdvanceMm }];
  });
}

/** From where the tip before it lets the target down to it; higher where something else stands in between. */
function firstStruck(
  profile: BiteProfile,
  climb: readonly number[],
  tip: number,
  shortMm: number,
  tips: readonly number[],
  mostAdvanceMm: number,
): number | null {
  const { pieces } = profile;
  const turn = atRound(pieces, tip).turnTo;
  const ways = tips.map((other) => {
    const way = turn - atRound(pieces, other).turnTo;
    return way > 0 ? way : way + 2 * Math.PI;
  });
  const own = new Set(climb);
  let advance = (shortMm / Math.min(...ways)) * (1 + JUST_ABOVE);
  for (; advance <= mostAdvanceMm; advance *= STEP) {
    if (litBy(approachLight(profile, advance)).some(({ index }) => own.has(index))) return advance;
  }
  return null;
}
