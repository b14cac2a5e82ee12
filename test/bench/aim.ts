/** Aims on the samples, beside 10,000 bars at random: the search has to be better and to take a fraction of the time. */
import { readSource } from "../../geometry/analysis/source.ts";
import { aimAt } from "../../geometry/study/aim/aim.ts";
import { MOVED_SAMPLES, type MovedSample } from "../study/aim/moved-samples.ts";
import { randomSearch } from "../study/aim/random-search.ts";
import type { BenchCase } from "./harness.ts";

const RANDOM_COUNT = 10_000;
/** The random search takes so many times as long, or the run fails. */
const TIMES_FASTER = 3;

function goalOf({ text, aim }: MovedSample): { readonly goal: number; readonly isMost: boolean } {
  const outcome = aimAt(readSource(text), { aim });
  const [bar] = outcome.status === "found" ? outcome.bars : [];
  const [goal] = bar?.goals ?? [];
  if (goal?.after == null) throw new Error(`${aim}: ${outcome.status}`);
  return { goal: goal.after, isMost: goal.sense === "most" };
}

/** Throws where random places are as good. */
function randomGoal(sample: MovedSample): number {
  const { goal } = randomSearch(sample.text, sample.aim, RANDOM_COUNT);
  if (goal === null) return Number.NaN;
  const own = goalOf(sample);
  if (own.isMost ? own.goal <= goal : own.goal >= goal)
    throw new Error(`${sample.file}: ${RANDOM_COUNT} random bars give ${goal}, the search ${own.goal}`);
  return goal;
}

export const cases: readonly BenchCase[] = MOVED_SAMPLES.flatMap((sample) => [
  {
    area: "aim",
    name: sample.file,
    inputs: sample.aim,
    peer: `${sample.file} at random`,
    target: TIMES_FASTER,
    run: () => goalOf(sample).goal,
  },
  {
    area: "aim",
    name: `${sample.file} at random`,
    inputs: `${RANDOM_COUNT} bars`,
    run: () => randomGoal(sample),
  },
]);
