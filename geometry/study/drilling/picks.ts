/** Holes under consideration: where, which drill, how deep, and how good a set of them is. */
import type { Point } from "../../language/design.ts";
import { distance, minus, norm, times } from "../../outline/vector.ts";
import type { HoleOption } from "./hole-options.ts";
import type { Metal } from "./metal.ts";
import type { Place, Spot } from "./places.ts";
import type { DrillWindow } from "./request.ts";

export interface SeekTask {
  /** The imbalance to take away, g·mm. */
  readonly load: Point;
  readonly massG: number;
  /** The centroid may stay so far off the axis; `aimMm` is what is sought, `neededMm` what will do. */
  readonly aimMm: number;
  readonly neededMm: number;
  /** The thinnest drill first. */
  readonly options: readonly HoleOption[];
  readonly spots: readonly Spot[];
  readonly netMm: number;
  readonly stepMm: number;
  readonly metal: Metal;
  readonly bridgeMm: number;
  readonly window: DrillWindow;
  readonly mostHoles: number;
}

/** One hole. */
export interface Pick {
  readonly place: Place;
  readonly option: HoleOption;
  readonly steps: number;
  readonly massG: number;
}

/** What `picks` leave of the load, g·mm. */
export function leftOver(load: Point, picks: readonly Pick[]): Point {
  return picks.reduce((left, { place, massG }) => minus(left, times(place, massG)), load);
}

export function takenBy(picks: readonly Pick[]): number {
  return picks.reduce((sum, { massG }) => sum + massG, 0);
}

export function isEnough({ load, massG, neededMm }: SeekTask, picks: readonly Pick[]): boolean {
  return norm(leftOver(load, picks)) <= neededMm * (massG - takenBy(picks));
}

/** What is left beyond the aim comes first, the metal taken second, and where both are equal what is left at all. */
export interface Score {
  readonly excessGMm: number;
  readonly takenG: number;
  readonly leftGMm: number;
}

const FAR = Number.POSITIVE_INFINITY;
export const NO_SCORE: Score = { excessGMm: FAR, takenG: FAR, leftGMm: FAR };

/** @param restG mass of the bar with all holes drilled */
export function scoreFor(leftGMm: number, takenG: number, restG: number, aimMm: number): Score {
  return { excessGMm: Math.max(0, leftGMm - aimMm * restG), takenG, leftGMm };
}

export function scoreOf({ load, massG, aimMm }: SeekTask, picks: readonly Pick[]): Score {
  const takenG = takenBy(picks);
  return scoreFor(norm(leftOver(load, picks)), takenG, massG - takenG, aimMm);
}

/** A nanogram or a g·nm is no gain: without this, rounding could go on for ever. */
const NO_GAIN = 1e-9;

export function isBetter(a: Score, b: Score): boolean {
  if (a.excessGMm < b.excessGMm - NO_GAIN) return true;
  if (a.excessGMm > b.excessGMm + NO_GAIN) return false;
  if (a.takenG < b.takenG - NO_GAIN) return true;
  return a.takenG <= b.takenG + NO_GAIN && a.leftGMm < b.leftGMm - NO_GAIN;
}

/** Whether a hole keeps the least bridge to another. */
export function isApart(
  place: Point,
  { roomMm }: HoleOption,
  other: { readonly place: Point; readonly option: HoleOption },
  bridgeMm: number,
): boolean {
  return distance(place, other.place) >= roomMm + other.option.roomMm - bridgeMm;
}
