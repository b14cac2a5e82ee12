/**
 * The search for two goals: the line of bars of which none is better in both. Its ends are the best bars of each goal
 * alone; between them one goal is kept within a level while the other is searched for (the ε-constraint method, Haimes,
 * Lasdon and Wismer 1971): first in the middle of the widest gap again and again, then evenly along the line.
 */
import { descend } from "./descend.ts";
import {
  bestFirst,
  distance,
  isFeasible,
  type Measured,
  type MeasuredSteps,
  type Place,
  type Rating,
  rateBy,
  rated,
  type Tried,
  tryAt,
} from "./rating.ts";
import { type Effort, searchOne } from "./search-one.ts";
import type { Random } from "./seeded.ts";

export interface FrontRequest {
  readonly seeds: readonly Place[];
  readonly size: number;
  readonly effort: Effort;
  readonly random: Random;
  /** How many bars are wanted along the line, ends included. */
  readonly count: number;
  /** For each goal the smooth form of a value of it. */
  readonly smoothOf: readonly ((value: number) => number)[];
}

/** A bar of the line. */
export interface FrontPlace {
  readonly at: Place;
  readonly measured: Measured;
}

/** The line, by the first goal; a single place where one bar is the best in both; none where no bar is feasible. */
export function* searchFront(request: FrontRequest): MeasuredSteps<readonly FrontPlace[]> {
  const { seeds, size, effort, random, count } = request;
  const ends: FrontPlace[] = [];
  for (const goal of [0, 1] as const) {
    const from = [...ends.map(({ at }) => at), ...seeds];
    const best = yield* rated(searchOne(from, size, effort, random), rateBy(goal));
    if (best === null || !isFeasible(best.rating)) return [];
    ends.push(yield* endFrom(request, best, goal));
  }
  const [first, last] = ends;
  if (!first || !last) return [];
  const frame = frameOf(first, last);
  if (frame === null) return [first];
  const coarse = yield* fillGaps(request, frame, [first, last]);
  const even = yield* spreadEvenly(request, frame, coarse, count);
  return [...nonDominated([first, ...even, last])].sort((a, b) => goalOf(a, 0) - goalOf(b, 0));
}

function goalOf({ measured }: Pick<FrontPlace, "measured">, index: number): number {
  return measured.goals[index]?.value ?? Number.POSITIVE_INFINITY;
}

/** The width of the line in each goal; null where it has none. */
type Frame = readonly [number, number];

/** Ends nearer together than this are one bar. */
const LEAST_SPAN = 1e-6;

function frameOf(first: FrontPlace, last: FrontPlace): Frame | null {
  const spans = [0, 1].map((goal) => Math.abs(goalOf(first, goal) - goalOf(last, goal)));
  const isOne = spans.some(
    (span, goal) => span <= LEAST_SPAN * Math.max(1e-9, Math.abs(goalOf(first, goal))),
  );
  return isOne ? null : [spans[0] ?? 1, spans[1] ?? 1];
}

/** One goal searched for while the other is kept within a level. */
interface Cut {
  readonly goal: 0 | 1;
  readonly level: number;
  /** What the miss of the level is counted in. */
  readonly span: number;
}

function rateCut({ smoothOf }: FrontRequest, { goal, level, span }: Cut): (measured: Measured) => Rating {
  const other = goal === 0 ? 1 : 0;
  const smoothLevel = (smoothOf[other] ?? ((value: number) => value))(level);
  const rate = rateBy(goal);
  return (measured) => {
    const rating = rate(measured);
    const { value, smooth } = measured.goals[other] ?? { value: 0, smooth: 0 };
    return {
      ...rating,
      excess: [...rating.excess, (value - level) / span],
      smooth: [...rating.smooth, (smooth - smoothLevel) / span],
    };
  };
}

/** Of the bars that are best in one goal, the one that is best in the other too. */
function* endFrom(request: FrontRequest, best: Tried, goal: 0 | 1): MeasuredSteps<FrontPlace> {
  const { value } = best.rating.measured.goals[goal] ?? { value: 0 };
  const span = Math.max(Math.abs(value), 1e-9);
  const rate = rateCut(request, { goal: goal === 0 ? 1 : 0, level: value + 1e-8 * span, span });
  const begin = { at: best.at, rating: rate(best.rating.measured) };
  const found = yield* rated(descend(begin), rate);
  return isFeasible(found.rating) ? placeOf(found) : placeOf(best);
}

function placeOf({ at, rating }: Tried): FrontPlace {
  return { at, measured: rating.measured };
}

function* fillGaps(
  request: FrontRequest,
  frame: Frame,
  ends: readonly FrontPlace[],
): MeasuredSteps<readonly FrontPlace[]> {
  let line = ends;
  const closed = new Set<FrontPlace>();
  while (line.length < request.count) {
    const gap = widestGap(line, frame, closed);
    if (gap === null) break;
    const [from, to] = gap;
    const found = yield* cutBetween(request, frame, from, to, 1 / 2);
    const next = found === null ? line : nonDominated([...line, found]);
    if (found === null || !next.includes(found) || isNear(found, from, frame) || isNear(found, to, frame))
      closed.add(from);
    else line = [...next].sort((a, b) => goalOf(a, 0) - goalOf(b, 0));
  }
  return line;
}

function widestGap(
  line: readonly FrontPlace[],
  frame: Frame,
  closed: ReadonlySet<FrontPlace>,
): readonly [FrontPlace, FrontPlace] | null {
  let widest: readonly [FrontPlace, FrontPlace] | null = null;
  for (const [i, from] of line.entries()) {
    const to = line[i + 1];
    if (to === undefined || closed.has(from)) continue;
    if (widest === null || gapOf(from, to, frame) > gapOf(...widest, frame)) widest = [from, to];
  }
  return widest;
}

/** How far apart two bars are, in shares of the line's widths. */
function gapOf(a: FrontPlace, b: FrontPlace, [first, second]: Frame): number {
  return Math.hypot((goalOf(a, 0) - goalOf(b, 0)) / first, (goalOf(a, 1) - goalOf(b, 1)) / second);
}

/** Bars nearer than this share of the line are the same to a builder. */
const SAME_SHARE = 1e-3;

function isNear(a: FrontPlace, b: FrontPlace, frame: Frame): boolean {
  return gapOf(a, b, frame) < SAME_SHARE;
}

/** From bars that the checker likes, it is seldom far to the best. */
const MOST_WALLS = 3;

/** The bar at a share of the way between two, measured in the goal in which they are farther apart. */
function* cutBetween(
  request: FrontRequest,
  frame: Frame,
  from: FrontPlace,
  to: FrontPlace,
  share: number,
): MeasuredSteps<FrontPlace | null> {
  const wide = [0, 1].map((goal) => Math.abs(goalOf(from, goal) - goalOf(to, goal)) / (frame[goal] ?? 1));
  const kept = (wide[0] ?? 0) >= (wide[1] ?? 0) ? 0 : 1;
  const level = goalOf(from, kept) + share * (goalOf(to, kept) - goalOf(from, kept));
  const rate = rateCut(request, { goal: kept === 0 ? 1 : 0, level, span: frame[kept] });
  const between = from.at.map((value, i) => value + share * ((to.at[i] ?? 0) - value));
  const begins = [from, to].map(({ at, measured }) => ({ at, rating: rate(measured) }));
  const middle = yield* rated(tryAt(between), rate);
  const [nearest, other] = [...(middle ? [middle] : []), ...begins].sort(bestFirst);
  const reached: Tried[] = [];
  for (const begin of [nearest, other]) {
    const isSame = begin === undefined || reached.some(({ at }) => distance(at, begin.at) < SAME_SHARE);
    if (!isSame) reached.push(yield* rated(descend(begin, MOST_WALLS), rate));
  }
  const [best] = reached.sort(bestFirst);
  return best && isFeasible(best.rating) ? placeOf(best) : null;
}

/** Bars at even distances along the line through the given ones, each searched for anew. */
function* spreadEvenly(
  request: FrontRequest,
  frame: Frame,
  line: readonly FrontPlace[],
  count: number,
): MeasuredSteps<readonly FrontPlace[]> {
  const lengths = line.slice(1).map((to, i) => gapOf(line[i] ?? to, to, frame));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const even: FrontPlace[] = [];
  for (let number = 1; number < count - 1; number += 1) {
    let rest = (total * number) / (count - 1);
    let i = 0;
    while (i < lengths.length - 1 && rest > (lengths[i] ?? 0)) {
      rest -= lengths[i] ?? 0;
      i += 1;
    }
    const [from, to] = [line[i], line[i + 1]];
    if (from === undefined || to === undefined) continue;
    const found = yield* cutBetween(request, frame, from, to, Math.min(1, rest / (lengths[i] || 1)));
    if (found !== null && !even.some((other) => isNear(other, found, frame))) even.push(found);
  }
  return even;
}

/** Those of which no other is at least as good in both goals and better in one. */
export function nonDominated<T extends Pick<FrontPlace, "measured">>(places: readonly T[]): readonly T[] {
  return places.filter((place, i) => !places.some((other, k) => dominates(other, place, k < i)));
}

function dominates(
  a: Pick<FrontPlace, "measured">,
  b: Pick<FrontPlace, "measured">,
  isFirst: boolean,
): boolean {
  const [a0, a1, b0, b1] = [goalOf(a, 0), goalOf(a, 1), goalOf(b, 0), goalOf(b, 1)];
  const isEqual = a0 === b0 && a1 === b1;
  return isEqual ? isFirst : a0 <= b0 && a1 <= b1;
}
