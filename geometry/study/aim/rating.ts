/** How places of a search are rated, and which of two is the better one. */

/** A value for each let: 0 at its lower bound, 1 at its upper one. */
export type Place = readonly number[];

/** What is to become small. */
export interface GoalValue {
  readonly value: number;
  /** The same, or a function of it that rises with it and has no kink where it is least. */
  readonly smooth: number;
}

/** What a place came to. */
export interface Measured {
  readonly goals: readonly GoalValue[];
  /** For each limit by which share of it it is missed; at most 0 where it holds. */
  readonly excess: readonly number[];
  /** Functions without kinks, all at most 0 only where all limits hold. */
  readonly smooth: readonly number[];
  /** How many new problems the checker finds; worked out when it is asked for. */
  faults(): number;
}

/** A place as one goal rates it. */
export interface Rating extends Omit<Measured, "goals"> {
  readonly measured: Measured;
  readonly goal: number;
  readonly smoothGoal: number;
}

/** Rates by one of the goals. */
export function rateBy(index: number): (measured: Measured) => Rating {
  return (measured) => {
    const { excess, smooth, goals } = measured;
    const { value, smooth: smoothGoal } = goals[index] ?? { value: 0, smooth: 0 };
    return { measured, excess, smooth, goal: value, smoothGoal, faults: () => measured.faults() };
  };
}

/** A place that was measured. */
export interface Tried {
  readonly at: Place;
  readonly rating: Rating;
}

/** A search asks for places one by one and is told their rating: null where the bar cannot be built or measured. */
export type Steps<Result> = Generator<Place, Result, Rating | null>;
/** The same, for a search that rates by itself. */
export type MeasuredSteps<Result> = Generator<Place, Result, Measured | null>;

/** Follows a search for one goal, and rates for it. */
export function* rated<Result>(
  steps: Steps<Result>,
  rate: (measured: Measured) => Rating,
): MeasuredSteps<Result> {
  let next = steps.next();
  while (next.done !== true) {
    const measured = yield next.value;
    next = steps.next(measured && rate(measured));
  }
  return next.value;
}

/** A limit met to the last bits is met, as for the checker. */
export const LIMIT_TOLERANCE = 1e-12;

/** By how much the limits are missed together; 0 where all hold. */
export function missOf({ excess }: Pick<Rating, "excess">): number {
  return excess.reduce((sum, share) => (share > LIMIT_TOLERANCE ? sum + share : sum), 0);
}

/** True where all limits hold and the checker finds nothing new. */
export function isFeasible(rating: Pick<Rating, "excess" | "faults">): boolean {
  return missOf(rating) === 0 && rating.faults() === 0;
}

/**
 * Negative where `a` is the better place. The rules of Deb (2000, "An efficient constraint handling method for genetic
 * algorithms"): what is feasible comes before what is not, of two infeasible places the one that misses less, of two
 * feasible ones the better goal. What the checker finds counts behind the limits, so that it is asked seldom.
 */
export function compareRatings(a: Rating, b: Rating): number {
  const [missA, missB] = [missOf(a), missOf(b)];
  if (missA > 0 || missB > 0) return missA - missB;
  return a.faults() - b.faults() || a.goal - b.goal;
}

export function bestFirst(a: Tried, b: Tried): number {
  return compareRatings(a.rating, b.rating);
}

/** Asks for a place; null where it cannot be rated. */
export function* tryAt(at: Place): Steps<Tried | null> {
  const rating = yield at;
  return rating && { at, rating };
}

/** Inside the bounds. */
export function clamped(at: Place): Place {
  return at.map((value) => Math.min(1, Math.max(0, value)));
}

export function distance(a: Place, b: Place): number {
  return Math.hypot(...a.map((value, i) => value - (b[i] ?? 0)));
}
