/**
 * Balance a bar by moving one or two of its lets: values of theirs, within their bounds, that bring the centroid to the
 * spin axis, as edits of the text. A file is only ever changed into one that the checker likes as well as it did.
 */

import { isObstacle } from "../analysis/judgements.ts";
import type { Source } from "../analysis/source.ts";
import { type Attempt, attemptAt, unchanged, valuesAt } from "./attempt.ts";
import { type BalanceBy, type BalanceRequest, stateOf, type Task, type WhyNot } from "./balancing.ts";
import { centroidAt } from "./centroid-at.ts";
import { type MovableLet, movableLet } from "./movable-let.ts";
import { neededBalance } from "./needed-balance.ts";
import { analyseAll } from "./new-problems.ts";
import { type Found, gridOf, type Measure, solveZero, type Unknowns } from "./solve-zero.ts";
import { failureOf } from "./why-not.ts";

export type { BalanceBy, BalanceRequest, BalanceState, Balancing, LetMove, WhyNot } from "./balancing.ts";
export { told } from "./balancing.ts";

/** Finds values of one or two lets that balance the bar. Never throws for what a text may say. */
export function balanceBy(
  source: Source,
  { names, variant = null, settings = {} }: BalanceRequest,
): BalanceBy {
  if (names.length < 1 || names.length > 2 || new Set(names).size < names.length)
    return refusal("wrong-count", "Name one let or two different ones to balance by.");
  const all = analyseAll(source, settings);
  const start = all.find((analysis) => analysis.variant === variant);
  if (!start) return refusal("file-has-errors", `The file has no variant "${variant}".`);
  const lets = names.map((name) => movableLet(source.tree, start.design, name));
  for (const found of lets) if ("reason" in found) return refusal(found.reason, found.message);
  const before = stateOf(start);
  const obstacle = start.problems.find(isObstacle);
  if (obstacle || !before)
    return refusal(
      "file-has-errors",
      `Mend the file's errors first${obstacle ? `: ${obstacle.message}` : "."}`,
    );
  const movable = lets.filter((found): found is MovableLet => !("reason" in found));
  return search({
    source,
    variant,
    settings,
    all,
    start,
    before,
    lets: movable,
    needed: neededBalance(start),
  });
}

function refusal(reason: WhyNot, message: string): BalanceBy {
  return { solved: false, reason, message, before: null, nearest: null };
}

/** A solved centroid is this near the axis; the digits written into the file leave far more. */
const SOLVED_MM = 1e-9;
/** From this many places of the grid, the best ones, when the present values lead nowhere. */
const MOST_STARTS = 4;
/** The imbalance that a file allows depends on the mass, and that a little on the lets. */
const CLEARLY_OVER = 1.5;
const GRID_ALONG = { one: 9, two: 5 } as const;

function search(task: Task): BalanceBy {
  const { lets, before, needed } = task;
  // A bar that is balanced as finely as values are rounded for is left in peace.
  if (before.eccentricityMm <= needed.aimMm) return { solved: true, before, ...unchanged(task) };
  const measure: Measure = (at) => centroidAt(task.source.tree, task.variant, lets, valuesAt(lets, at));
  const present = lets.map(({ value, least, most }) =>
    Math.min(1, Math.max(0, (value - least) / (most - least))),
  );
  const seen: Found[] = [];
  const attempts: Attempt[] = [];
  for (const begin of startsFrom(present, measure)) {
    const found = solveZero(measure, begin, SOLVED_MM);
    if (!found || seen.some(({ at }) => isSamePlace(at, found.at))) continue;
    seen.push(found);
    // To work out a whole file takes far longer than to see that it is too far off.
    if (found.size > needed.neededMm * CLEARLY_OVER) continue;
    const attempt = attemptAt(task, found);
    attempts.push(attempt);
    // Good enough to be written, and no better place need be looked for.
    if (attempt.verdict === "balanced" && found.size <= needed.aimMm) break;
  }
  const [balanced] = attempts.filter(({ verdict }) => verdict === "balanced").sort(nearestFirst);
  if (balanced) return { solved: true, before, ...balanced.balancing };
  const [nearest] = seen.sort(nearestFirst);
  return failureOf(task, attempts[0] ?? (nearest ? attemptAt(task, nearest) : null));
}

function nearestFirst(one: Found, other: Found): number {
  return one.size - other.size;
}

/** The present values first; only if they lead nowhere is the grid looked at, and then its best places. */
function* startsFrom(present: Unknowns, measure: Measure): Generator<Unknowns> {
  yield present;
  const grid = gridOf(present.length, present.length === 1 ? GRID_ALONG.one : GRID_ALONG.two);
  const measured = grid.flatMap((at) => {
    const residual = measure(at);
    return residual === null ? [] : [{ at, size: Math.hypot(...residual) }];
  });
  for (const { at } of measured.sort((a, b) => a.size - b.size).slice(0, MOST_STARTS)) yield at;
}

function isSamePlace(a: Unknowns, b: Unknowns): boolean {
  return a.every((value, i) => Math.abs(value - (b[i] ?? 0)) < 1e-6);
}
