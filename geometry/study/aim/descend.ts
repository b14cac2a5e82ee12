/**
 * From a place downhill to the nearest best one, limits and bounds kept: sequential quadratic programming with slopes by
 * differences, a damped BFGS update of the curvature (Powell 1978), an elastic variable where the limits cannot all be
 * met at once, a second-order correction, and a trust region of box shape with the ℓ1 merit (Nocedal and Wright,
 * *Numerical Optimization*, 2nd ed. 2006, ch. 18). Optima at which limits press are reached to rounding.
 */
import { dampedUpdate, identity } from "./curvature.ts";
import { type QuadraticSolution, solveQuadratic } from "./quadratic.ts";
import { clamped, compareRatings, type Place, type Rating, type Steps, type Tried } from "./rating.ts";
import { feelWall, type Wall } from "./walls.ts";

/** Width of a difference: rounding takes 1e-7 of the slope, curvature as much. */
const DIFFERENCE = 1e-6;
/** Limits are approached to this share of them, so that rounding never carries a place over. */
const CLEARANCE = 1e-10;
const FIRST_RADIUS = 0.25;
const LEAST_RADIUS = 1e-9;
const MOST_STEPS = 40;
const FIRST_CURVATURE = 0.1;
const WALL_LEAN = 5e-4;
/** What a missed limit costs in the quadratic program: more than any gain of the goal. */
const ELASTIC_COST = 1e4;
/** A step that is predicted to gain less is not worth a measurement. */
const LEAST_GAIN = 1e-13;

interface Slopes {
  readonly goal: readonly number[];
  readonly smooth: readonly (readonly number[])[];
}

/**
 * Steps from a measured place until no step is better; the best place met on the way.
 * @param mostWalls so many times it is felt out where the checker begins to refuse, which takes many measurements
 */
export function* descend(begin: Tried, mostWalls = 0): Steps<Tried> {
  const walls: Wall[] = [];
  let here = begin;
  let best = begin;
  let radius = FIRST_RADIUS;
  let curvature = identity(begin.at.length, FIRST_CURVATURE);
  let slopes = yield* slopesAt(here);
  for (let step = 0; step < MOST_STEPS && radius > LEAST_RADIUS; step += 1) {
    const solved = solveAround(here, slopes, curvature, radius, walls);
    if (solved === null) break;
    const penalty = 2 * Math.max(1e-3, ...solved.pressing);
    const predicted =
      meritOf(here.rating, penalty) - predictedMerit(here.rating, slopes, solved, curvature, penalty);
    if (!(predicted > LEAST_GAIN)) break;
    const tried = yield* tryStep(here, slopes, curvature, radius, walls, solved, penalty);
    if (tried !== null && compareRatings(tried.rating, best.rating) < 0) best = tried;
    const gain =
      tried === null ? -1 : (meritOf(here.rating, penalty) - meritOf(tried.rating, penalty)) / predicted;
    const length = Math.max(...solved.step.map(Math.abs));
    if (tried !== null && walls.length < mostWalls && runsIntoFault(here, tried)) {
      const felt = yield* feelWall(here, tried.at);
      if (felt !== null) {
        walls.push(felt.wall);
        if (compareRatings(felt.nearest.rating, best.rating) < 0) best = felt.nearest;
        if (meritOf(felt.nearest.rating, penalty) < meritOf(here.rating, penalty)) {
          here = felt.nearest;
          slopes = yield* slopesAt(here);
        }
        continue;
      }
    }
    if (tried === null || gain < 0.05 || (mostWalls > 0 && runsIntoFault(here, tried))) {
      radius = Math.min(radius, length) * 0.3;
      continue;
    }
    if (gain > 0.75 && length > 0.99 * radius) radius = Math.min(1, radius * 2);
    else if (gain < 0.25) radius = Math.min(radius, length) * 0.5;
    const next = yield* slopesAt(tried);
    const moved = tried.at.map((value, i) => value - (here.at[i] ?? 0));
    const change = lagrangianSlope(next, solved.pressing).map(
      (value, i) => value - (lagrangianSlope(slopes, solved.pressing)[i] ?? 0),
    );
    curvature = dampedUpdate(curvature, moved, change);
    [here, slopes] = [tried, next];
  }
  return best;
}

/** From a place that the checker likes no step leads to one that it does not. */
function runsIntoFault(here: Tried, tried: Tried): boolean {
  return tried.rating.faults() > 0 && here.rating.faults() === 0;
}

interface SolvedStep {
  readonly step: readonly number[];
  /** The multiplier of each smooth limit. */
  readonly pressing: readonly number[];
}

/** The step of the model around a place, inside bounds and trust region; `limits` are the smooth limits' values there. */
function solveAround(
  { at, rating }: Tried,
  { goal, smooth }: Slopes,
  curvature: readonly (readonly number[])[],
  radius: number,
  walls: readonly Wall[],
  limits: readonly number[] = rating.smooth,
): SolvedStep | null {
  const values = limits.map((value) => value + CLEARANCE);
  // The elastic variable is the last one: it opens the limits that are missed, and nothing else.
  const size = at.length;
  const zeros = at.map(() => 0);
  const unit = (i: number, value: number) => [...zeros.map((_, k) => (k === i ? value : 0)), 0];
  // A wall is felt out to a few digits: a step along it leans away from it by as much.
  const wallRoom = walls.map(({ normal, offset }) => offset - dot(normal, at) - WALL_LEAN * radius);
  const rows = [
    ...smooth.map((row, j) => [...row, (values[j] ?? 0) > 0 ? -1 : 0]),
    ...at.flatMap((_, i) => [unit(i, 1), unit(i, -1)]),
    ...walls.map(({ normal }, j) => [...normal, (wallRoom[j] ?? 0) < 0 ? -1 : 0]),
    [...zeros, -1],
  ];
  const room = [
    ...values.map((value) => -value),
    ...at.flatMap((value) => [Math.min(radius, 1 - value), Math.min(radius, value)]),
    ...wallRoom,
    0,
  ];
  const solved: QuadraticSolution | null = solveQuadratic({
    curvature: [...curvature.map((row) => [...row, 0]), [...zeros, 1]],
    slope: [...goal, ELASTIC_COST * Math.max(1, ...goal.map(Math.abs))],
    rows,
    room,
  });
  if (solved === null) return null;
  return { step: solved.step.slice(0, size), pressing: solved.multipliers.slice(0, smooth.length) };
}

/** The step, or a corrected one where curved limits keep it from being better. */
function* tryStep(
  here: Tried,
  slopes: Slopes,
  curvature: readonly (readonly number[])[],
  radius: number,
  walls: readonly Wall[],
  { step }: SolvedStep,
  penalty: number,
): Steps<Tried | null> {
  const at = stepped(here.at, step);
  const rating = yield at;
  if (rating === null) return null;
  const first = { at, rating };
  const merit = meritOf(rating, penalty);
  const isWorse = merit >= meritOf(here.rating, penalty);
  if (!isWorse || !rating.smooth.some((value) => value > 0)) return first;
  // The limits as they are at the step's end, led back along the slopes to where it started.
  const limits = rating.smooth.map((value, j) => value - dot(slopes.smooth[j] ?? [], step));
  const corrected = solveAround(here, slopes, curvature, radius, walls, limits);
  if (corrected === null) return first;
  const second = stepped(here.at, corrected.step);
  const secondRating = yield second;
  return secondRating !== null && meritOf(secondRating, penalty) < merit
    ? { at: second, rating: secondRating }
    : first;
}

function stepped(at: Place, step: readonly number[]): Place {
  return clamped(at.map((value, i) => value + (step[i] ?? 0)));
}

/** Goal and missed limits in one number that a good step makes smaller. */
function meritOf({ smoothGoal, smooth }: Rating, penalty: number): number {
  return smoothGoal + penalty * smooth.reduce((sum, value) => sum + Math.max(0, value + CLEARANCE), 0);
}

function predictedMerit(
  rating: Rating,
  { goal, smooth }: Slopes,
  { step }: SolvedStep,
  curvature: readonly (readonly number[])[],
  penalty: number,
): number {
  const bend = curvature.reduce((sum, row, i) => sum + dot(row, step) * (step[i] ?? 0), 0) / 2;
  const limits = rating.smooth.map((value, j) => value + dot(smooth[j] ?? [], step));
  return meritOf(
    { ...rating, smoothGoal: rating.smoothGoal + dot(goal, step) + bend, smooth: limits },
    penalty,
  );
}

/** How goal and limits change with each let: by differences, 0 where neither side can be measured. */
function* slopesAt({ at, rating }: Tried): Steps<Slopes> {
  const goal: number[] = [];
  const columns: (readonly number[])[] = [];
  for (const [i, value] of at.entries()) {
    const sides = value + DIFFERENCE <= 1 ? [DIFFERENCE, -DIFFERENCE] : [-DIFFERENCE];
    let found: Rating | null = null;
    let width = 1;
    for (const side of sides) {
      if (value + side < 0 || found !== null) continue;
      found = yield at.map((other, k) => (k === i ? other + side : other));
      width = side;
    }
    goal.push(found === null ? 0 : (found.smoothGoal - rating.smoothGoal) / width);
    columns.push(
      rating.smooth.map((before, j) => (found === null ? 0 : ((found.smooth[j] ?? 0) - before) / width)),
    );
  }
  return { goal, smooth: rating.smooth.map((_, j) => columns.map((column) => column[j] ?? 0)) };
}

function lagrangianSlope({ goal, smooth }: Slopes, pressing: readonly number[]): readonly number[] {
  return goal.map(
    (value, i) => value + smooth.reduce((sum, row, j) => sum + (pressing[j] ?? 0) * (row[i] ?? 0), 0),
  );
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}
