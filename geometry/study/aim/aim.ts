/**
 * The best bar that a file asks for: `aim most inertia keeping mass <= 1.6 kg by tail, waist`. Values of the lets within
 * their bounds for which a figure is the most or the least while all limits hold, those of the aim, the requirements of
 * the file, and what the checker says. For two goals the line of bars of which none is better in both.
 */
import type { Source } from "../../analysis/source.ts";
import { type AimTask, aimTask } from "./aim-task.ts";
import { aimedBar } from "./aimed-bar.ts";
import type { AimAbout, AimedBar, AimOutcome, AimProgress, AimRequest } from "./aiming.ts";
import { createFound, type Found } from "./best-so-far.ts";
import { missText } from "./miss-text.ts";
import {
  compareRatings,
  isFeasible,
  type Measured,
  type MeasuredSteps,
  type Place,
  type Rating,
  rateBy,
  rated,
} from "./rating.ts";
import { type Rounded, roundOff } from "./round-off.ts";
import { type FrontPlace, searchFront } from "./search-front.ts";
import { EFFORTS, searchOne } from "./search-one.ts";
import { seededRandom } from "./seeded.ts";

export type {
  AimedBar,
  AimOutcome,
  AimProgress,
  AimRequest,
  GoalStanding,
  LimitStanding,
} from "./aiming.ts";
export { EFFORTS, type EffortName } from "./search-one.ts";
export { freeVariantName, variantBlock, variantLines } from "./variant-block.ts";

/** A search in steps: after each bar measured it tells how far it is. Told to stop, it ends with the best so far. */
export type AimSearch = Generator<AimProgress, AimOutcome, "stop" | undefined>;

/** Bars along the line of two goals. */
const LINE_COUNT = 9;
/** Two goals are searched for in turn and then together. */
const LINE_SHARE = 4;

/**
 * Searches for the bar, one measured bar a step. The same source and request give the same answer, to the last byte.
 * Never throws for what a text may say.
 */
export function* searchAim(source: Source, request: AimRequest = {}): AimSearch {
  const task = aimTask(source, request);
  if ("reason" in task) return { status: "refused", ...task };
  const found = createFound(task);
  const followed = yield* follow(task, stepsOf(task), found);
  const best = found.best();
  const [first] = found.line();
  const line = followed.line.length > 0 ? followed.line : found.line();
  const isFound = best !== null && isFeasible(best.rating);
  const places =
    task.goals.length > 1 && first ? line : best ? [{ at: best.at, measured: best.rating.measured }] : [];
  const bars = yield* barsOf(task, places, followed, found);
  const count = { evaluations: followed.evaluations, isStopped: followed.isStopped };
  const good = bars.filter(isGood);
  if (isFound && good.length > 0) return { status: "found", bars: notBeaten(good), ...count };
  const [nearest = null] = bars;
  return { status: "infeasible", message: nearest ? missText(nearest) : NOTHING_MEASURED, nearest, ...count };
}

const NOTHING_MEASURED = "With no values within the bounds can the bar be built and measured.";

/** As the changed text was judged: what the search measured is believed no more. */
function isGood({ limits, problems }: AimedBar): boolean {
  return problems.length === 0 && limits.every(({ holds }) => holds);
}

/** The search to its end, without looking on. */
export function aimAt(source: Source, request: AimRequest = {}): AimOutcome {
  const steps = searchAim(source, request);
  let next = steps.next();
  while (next.done !== true) next = steps.next();
  return next.value;
}

function stepsOf(task: AimTask): MeasuredSteps<readonly FrontPlace[]> {
  const { request, goals, lets } = task;
  if (request.found !== undefined) return theseAlone(request.found.map(task.placeOf));
  const effort = EFFORTS[request.effort ?? "usual"];
  const random = seededRandom(request.seed ?? 1);
  const seeds = [task.placeOf(lets.map(({ value }) => value))];
  const size = lets.length;
  if (goals.length === 1) return withoutResult(rated(searchOne(seeds, size, effort, random), rateBy(0)));
  const smoothOf = goals.map(({ smooth }) => smooth);
  return searchFront({ seeds, size, effort, random, count: LINE_COUNT, smoothOf });
}

/** Measures these places and no other. */
function* theseAlone(places: readonly Place[]): MeasuredSteps<readonly FrontPlace[]> {
  for (const at of places) yield at;
  return [];
}

/** What one goal comes to is kept while it is searched for. */
function* withoutResult(steps: MeasuredSteps<unknown>): MeasuredSteps<readonly FrontPlace[]> {
  yield* steps;
  return [];
}

function aboutOf({ goals, lets }: AimTask): AimAbout {
  return {
    goals: goals.map(({ told, goal }) => ({ ...told, sense: goal.sense })),
    lets: lets.map(({ name, unit }) => ({ name, unit })),
  };
}

interface Followed {
  readonly evaluations: number;
  readonly most: number;
  readonly isStopped: boolean;
  /** The line that the search ended with; none where it was stopped before, or for one goal. */
  readonly line: readonly FrontPlace[];
}

/** Measures what the search asks for, until it ends, as many as may be are measured, or somebody says stop. */
function* follow(
  task: AimTask,
  steps: MeasuredSteps<readonly FrontPlace[]>,
  found: Found,
): Generator<AimProgress, Followed, "stop" | undefined> {
  const effort = EFFORTS[task.request.effort ?? "usual"];
  const most = effort.most * task.lets.length * (task.goals.length > 1 ? LINE_SHARE : 1);
  const about = aboutOf(task);
  let evaluations = 0;
  let next = steps.next();
  while (next.done !== true && evaluations < most) {
    const measured = task.measure(next.value);
    evaluations += 1;
    if (measured !== null) found.add(next.value, measured);
    const told = yield { about, evaluations, most, best: found.shown };
    if (told === "stop") return { evaluations, most, isStopped: true, line: [] };
    next = steps.next(measured);
  }
  return { evaluations, most, isStopped: false, line: next.done === true ? next.value : [] };
}

/** The bars of these places, their values rounded and the changed text checked. */
function* barsOf(
  task: AimTask,
  places: readonly FrontPlace[],
  { evaluations, most }: Followed,
  found: Found,
): Generator<AimProgress, readonly AimedBar[], "stop" | undefined> {
  const about = aboutOf(task);
  const bars: AimedBar[] = [];
  for (const [i, place] of places.entries()) {
    const steps = roundOff(task, place, rateOf(i, places.length));
    let next = steps.next();
    while (next.done !== true) {
      yield { about, evaluations, most, best: found.shown };
      next = steps.next(task.measure(next.value));
    }
    if (next.value !== null) bars.push(betterBar(task, next.value, place.measured));
  }
  return bars;
}

/** At its ends the line is about one goal each. */
function rateOf(index: number, count: number): (measured: Measured) => Rating {
  if (index === 0) return rateBy(0);
  return index === count - 1 ? rateBy(1) : rateBySum;
}

/** The rounded bar, or the bar as it is where that is as good. */
function betterBar(task: AimTask, { at, digits, measured }: Rounded, exact: Measured): AimedBar {
  const present = task.placeOf(task.lets.map(({ value }) => value));
  const now = task.goals.length === 1 ? task.measure(present) : null;
  const isNoBetter = now !== null && compareRatings(rateBySum(now), rateBySum(measured)) <= 0;
  if (!isNoBetter) return aimedBar(task, at, digits, exact);
  const asIs = task.lets.map(({ value }) => String(value));
  return aimedBar(task, present, asIs, now);
}

/** Of two goals the sum: whichever way a value is rounded, what one gains is weighed against what the other loses. */
function rateBySum(measured: Measured): Rating {
  const goal = measured.goals.reduce((sum, { value }) => sum + value, 0);
  return { ...rateBy(0)(measured), goal, smoothGoal: goal };
}

/** Rounded bars of a line that no other one beats in both goals. */
function notBeaten(bars: readonly AimedBar[]): readonly AimedBar[] {
  const rated = bars.map((bar) => ({
    bar,
    values: bar.goals.map(({ sense, after }) => (sense === "most" ? -1 : 1) * (after ?? 0)),
  }));
  return rated
    .filter(({ values }, i) => !rated.some((other, k) => k !== i && beats(other.values, values, k < i)))
    .map(({ bar }) => bar);
}

function beats(a: readonly number[], b: readonly number[], isFirst: boolean): boolean {
  const isEqual = a.every((value, i) => value === b[i]);
  return isEqual ? isFirst : a.every((value, i) => value <= (b[i] ?? value));
}
