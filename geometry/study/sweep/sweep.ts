/** A bar with one or two of its lets swept over ranges: any figures of it at each value. */

import type { Analysis } from "../../analysis/analyse.ts";
import { standingOf } from "../../analysis/judge.ts";
import { statedLimits } from "../../language/stated-limits.ts";
import type { Variation } from "../variation.ts";
import type { StudiedFigure } from "./studied-figure.ts";
import type { SweptRange } from "./swept-let.ts";

/** One let of the sweep, in the order of the variation's lets. */
export interface SweptAxis extends SweptRange {
  /** How many values, both ends among them; at least 2. */
  readonly count: number;
}

/** The bar at one place of the sweep. */
export interface SweepRow {
  /** Of the lets, each in its own unit. */
  readonly values: readonly number[];
  /** False where the values make no plate that could be cut: crossed loops, holes outside. Figures are then null. */
  readonly isSound: boolean;
  /** In the order asked for; null where one cannot be known. */
  readonly figures: readonly (number | null)[];
  /** Whether all requirements of the file are kept; null where it has none, or one cannot be checked. */
  readonly keepsRequirements: boolean | null;
}

/** More places than this take minutes and more memory than they tell. */
export const MOST_PLACES = 250_000;

/** The values of an axis, evenly spaced, its ends exactly as given. */
export function valuesOf({ from, to, count }: SweptAxis): readonly number[] {
  return Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1);
    return from * (1 - share) + to * share;
  });
}

/** How many places a sweep has. */
export function placesOf(axes: readonly SweptAxis[]): number {
  return axes.reduce((product, { count }) => product * count, 1);
}

/**
 * Works the places out one by one, the last let fastest; the caller may rest or stop after each.
 * @throws RangeError for a count below 2 or no whole number, or for more places than `MOST_PLACES`
 */
export function* sweep(
  variation: Variation,
  axes: readonly SweptAxis[],
  figures: readonly StudiedFigure[],
): Generator<SweepRow, void, void> {
  if (!axes.every(({ count }) => Number.isInteger(count) && count >= 2) || placesOf(axes) > MOST_PLACES)
    throw new RangeError(`a sweep has 2 to ${MOST_PLACES} whole steps`);
  for (const values of placesAlong(axes.map(valuesOf))) {
    const analysis = variation.at(values);
    const { isSound } = analysis;
    yield {
      values,
      isSound,
      figures: figures.map((figure) => (isSound ? figure.of(analysis) : null)),
      keepsRequirements: isSound ? keepsRequirements(analysis) : null,
    };
  }
}

function keepsRequirements({ design, assessment }: Analysis): boolean | null {
  const holding = statedLimits(design).map(
    (requirement) => standingOf(requirement, assessment)?.holds ?? null,
  );
  if (holding.includes(false)) return false;
  return holding.length === 0 || holding.includes(null) ? null : true;
}

function* placesAlong([first, ...rest]: readonly (readonly number[])[]): Generator<readonly number[]> {
  if (first === undefined) yield [];
  else for (const value of first) for (const others of placesAlong(rest)) yield [value, ...others];
}
