/** The search for one goal: an even look around, descents from the best places, breeding, and a last polish. */
import { compass } from "./compass.ts";
import { descend } from "./descend.ts";
import { evolve } from "./evolve.ts";
import {
  bestFirst,
  clamped,
  compareRatings,
  distance,
  type Place,
  type Steps,
  type Tried,
  tryAt,
} from "./rating.ts";
import { evenPlaces, type Random } from "./seeded.ts";

/** How much is tried, each number for one let. */
export interface Effort {
  /** Places looked at first. */
  readonly samples: number;
  /** Descents from the best of them. */
  readonly descents: number;
  readonly population: number;
  readonly generations: number;
  /** No more places than this, whatever is still to be tried. */
  readonly most: number;
}

export const EFFORTS = {
  quick: { samples: 10, descents: 1, population: 4, generations: 6, most: 250 },
  usual: { samples: 30, descents: 2, population: 6, generations: 30, most: 800 },
  thorough: { samples: 100, descents: 5, population: 10, generations: 80, most: 4000 },
} as const satisfies Record<string, Effort>;
export type EffortName = keyof typeof EFFORTS;

/** The best place found; null where none could be measured. */
export function* searchOne(
  seeds: readonly Place[],
  size: number,
  effort: Effort,
  random: Random,
): Steps<Tried | null> {
  const looked: Tried[] = [];
  for (const at of [...seeds, ...evenPlaces(size, effort.samples * size, random)]) {
    const tried = yield* tryAt(clamped(at));
    if (tried !== null) looked.push(tried);
  }
  const reached: Tried[] = [];
  for (const begin of apart(looked.sort(bestFirst), effort.descents * size)) {
    if (reached.some(({ at }) => distance(at, begin.at) < SAME_PLACE)) continue;
    reached.push(yield* descend(begin));
  }
  const population = [...reached, ...looked].sort(bestFirst).slice(0, effort.population * size);
  const [leader] = yield* evolve(population, effort.generations, random);
  const best = [...reached, leader].filter((tried) => tried !== undefined).sort(bestFirst)[0];
  return best === undefined ? null : yield* polish(best);
}

const SAME_PLACE = 1e-3;
/** Starts nearer than this lead to the same place most often. */
const APART = 0.15;

/** The first of a sorted list, each some way from those before. */
function apart(sorted: readonly Tried[], count: number): readonly Tried[] {
  const chosen: Tried[] = [];
  for (const tried of sorted) {
    if (chosen.length === count) break;
    if (chosen.every(({ at }) => distance(at, tried.at) > APART)) chosen.push(tried);
  }
  return chosen;
}

/** Each is a kink of what the checker allows. */
const MOST_WALLS = 8;

/** Kinks by the compass, then the last bits by a descent. */
function* polish(best: Tried): Steps<Tried> {
  const nearest = yield* compass(yield* descend(best, MOST_WALLS));
  const last = yield* descend(nearest, MOST_WALLS);
  return compareRatings(last.rating, nearest.rating) <= 0 ? last : nearest;
}
