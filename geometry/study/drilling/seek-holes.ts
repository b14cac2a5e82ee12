/**
 * Where to drill so that the static moments of what is taken add up to the imbalance: the fewest holes that are found
 * to do it, then the least metal. With one hole more each time, holes are placed one after the other where each leaves
 * the least, two at once to close what is left, and then each is placed anew with the others standing, first anywhere
 * on the net and then in the finest steps that a shop measures, until none finds a better place. It finds good places,
 * not provably the best; what it says of them is exact. An integer program could prove it, at many times the code and
 * the time.
 */
import { dot, norm } from "../../outline/vector.ts";
import { isBetter, isEnough, leftOver, type Pick, type SeekTask, scoreOf } from "./picks.ts";
import { placeNear, placeOnNet } from "./place-one.ts";
import { placeTwo } from "./place-two.ts";
import { HALF_DEGREE } from "./places.ts";

/** The picks that do; else the nearest found, and `isEnough` false. */
export function seekHoles(task: SeekTask): { readonly picks: readonly Pick[]; readonly isEnough: boolean } {
  let nearest: readonly Pick[] = [];
  for (let count = fewestHoles(task); count <= task.mostHoles; count += 1) {
    const picks = bestOf(task, count);
    if (isEnough(task, picks)) return { picks, isEnough: true };
    const isNearer = norm(leftOver(task.load, picks)) < norm(leftOver(task.load, nearest)) * (1 - 1e-9);
    if (isNearer) nearest = picks;
    // No room for as many: more will find none either.
    if (picks.length < count) break;
  }
  return { picks: nearest, isEnough: isEnough(task, nearest) };
}

/** The net may miss the strongest place by a step or so. */
const NET_ALLOWANCE = 1.1;

/** Fewer holes than this cannot do: even the strongest place, so many times, takes too little. */
function fewestHoles({ load, massG, neededMm, spots, options, mostHoles }: SeekTask): number {
  const size = norm(load);
  let strongest = 0;
  for (const spot of spots) {
    const along = dot(spot, load) / size;
    for (const { roomMm, mostG } of options)
      if (roomMm <= spot.roomMm) strongest = Math.max(strongest, along * mostG);
  }
  if (strongest === 0) return mostHoles;
  const least = (size - neededMm * massG) / (strongest * NET_ALLOWANCE);
  return Math.min(mostHoles, Math.max(1, Math.ceil(least)));
}

/** The better of holes placed one by one and of two placed at once beside the others. */
function bestOf(task: SeekTask, count: number): readonly Pick[] {
  const oneByOne = settled(task, grown(task, [], count));
  if (count < 2 || isEnough(task, oneByOne)) return oneByOne;
  const closed = settled(task, closedByTwo(task, grown(task, [], count - 2)));
  return isBetter(scoreOf(task, closed), scoreOf(task, oneByOne)) ? closed : oneByOne;
}

/** Holes added one by one up to `count`, or until there is no room. */
function grown(task: SeekTask, begun: readonly Pick[], count: number): readonly Pick[] {
  const picks = [...begun];
  while (picks.length < count) {
    const next = placeOnNet(task, picks);
    if (!next) break;
    picks.push(next);
  }
  return picks;
}

function closedByTwo(task: SeekTask, others: readonly Pick[]): readonly Pick[] {
  return [...others, ...(placeTwo(task, others) ?? [])];
}

const MOST_NET_ROUNDS = 4;
const MOST_FINE_ROUNDS = 8;

/** Each hole placed anew in turn, until no place is better. */
function settled(task: SeekTask, begun: readonly Pick[]): readonly Pick[] {
  let picks = rounds(task, begun, MOST_NET_ROUNDS, (others) => placeOnNet(task, others));
  for (const tenths of [HALF_DEGREE, 1]) {
    picks = rounds(task, picks, MOST_FINE_ROUNDS, (others, now) => placeNear(task, others, now, tenths));
    // Tenths of a degree only where half degrees do not do.
    if (isEnough(task, picks)) break;
  }
  return picks;
}

function rounds(
  task: SeekTask,
  begun: readonly Pick[],
  most: number,
  placed: (others: readonly Pick[], now: Pick) => Pick | null,
): readonly Pick[] {
  let picks = begun;
  for (let round = 0; round < most; round += 1) {
    const before = picks;
    picks.forEach((now, i) => {
      const others = picks.filter((_, j) => j !== i);
      const next = placed(others, now);
      if (!next) return;
      const changed = picks.map((pick, j) => (j === i ? next : pick));
      if (isBetter(scoreOf(task, changed), scoreOf(task, picks))) picks = changed;
    });
    if (picks === before) break;
  }
  return picks;
}
