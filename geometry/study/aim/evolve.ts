/**
 * A population of places that breeds better ones: differential evolution as SHADE has it (Tanabe and Fukunaga 2013),
 * `current-to-pbest/1` with step and crossing rate learnt from what succeeded, selection by the rules of Deb. It asks for
 * no slopes: kinks, jumps and places where nothing can be built are all the same to it.
 */
import { bestFirst, compareRatings, type Place, type Steps, type Tried } from "./rating.ts";
import type { Random } from "./seeded.ts";

/** So many successful settings are remembered. */
const MEMORY = 5;
const FIRST_SETTING = 0.5;
/** Spread of the settings about the remembered ones, as in the paper. */
const SPREAD = 0.1;
const LEAST_POPULATION = 4;

/** Breeds for so many generations; the population as it then is, best first. */
export function* evolve(
  first: readonly Tried[],
  generations: number,
  random: Random,
): Steps<readonly Tried[]> {
  let population = [...first].sort(bestFirst);
  if (population.length < LEAST_POPULATION) return population;
  const memory = Array.from({ length: MEMORY }, () => ({ step: FIRST_SETTING, crossing: FIRST_SETTING }));
  for (let generation = 0; generation < generations; generation += 1) {
    const next: Tried[] = [];
    const won: Setting[] = [];
    for (const parent of population) {
      const setting = drawn(memory[Math.floor(random() * MEMORY)] ?? memory[0], random);
      const at = childOf(parent, population, setting, random);
      const rating = yield at;
      const isBetter = rating !== null && compareRatings(rating, parent.rating) < 0;
      if (isBetter) won.push(setting);
      next.push(isBetter ? { at, rating } : parent);
    }
    population = next.sort(bestFirst);
    if (won.length > 0) memory[generation % MEMORY] = meanOf(won);
  }
  return population;
}

interface Setting {
  readonly step: number;
  readonly crossing: number;
}

function drawn(around: Setting | undefined, random: Random): Setting {
  const { step, crossing } = around ?? { step: FIRST_SETTING, crossing: FIRST_SETTING };
  return {
    step: Math.min(1, Math.max(0.05, step + SPREAD * cauchy(random))),
    crossing: Math.min(1, Math.max(0, crossing + SPREAD * normal(random))),
  };
}

/** Lehmer's mean for the step, which favours long ones, as in the paper. */
function meanOf(won: readonly Setting[]): Setting {
  const sum = (of: (setting: Setting) => number) => won.reduce((total, setting) => total + of(setting), 0);
  return {
    step: sum(({ step }) => step ** 2) / sum(({ step }) => step),
    crossing: sum(({ crossing }) => crossing) / won.length,
  };
}

/** Between the parent and one of the best, along the difference of two others. `population` is sorted, best first. */
function childOf(
  parent: Tried,
  population: readonly Tried[],
  { step, crossing }: Setting,
  random: Random,
): Place {
  const pick = (count: number) => population[Math.floor(random() * count)] ?? parent;
  const leader = pick(Math.max(2, Math.ceil(population.length / 5)));
  const [one, other] = [pick(population.length), pick(population.length)];
  const forced = Math.floor(random() * parent.at.length);
  return parent.at.map((value, i) => {
    if (i !== forced && random() >= crossing) return value;
    const ahead = (leader.at[i] ?? 0) - value;
    const aside = (one.at[i] ?? 0) - (other.at[i] ?? 0);
    const moved = value + step * (ahead + aside);
    // Outside the bounds: half way to the bound.
    return moved < 0 ? value / 2 : moved > 1 ? (1 + value) / 2 : moved;
  });
}

function cauchy(random: Random): number {
  return Math.tan(Math.PI * (random() - 0.5));
}

/** Box and Muller (1958). */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
