/** Aims on the samples, beside 10,000 bars at random: the search has to be better, in no more time. */
import { readSource } from "../../geometry/analysis/source.ts";
import { aimAt } from "../../geometry/study/aim/aim.ts";
import { MOVED_SAMPLES, type MovedSample } from "../study/aim/moved-samples.ts";
import { randomSearch } from "../study/aim/random-search.ts";
import type { BenchCase } from "./harness.ts";

const RANDOM_COUNT = 10_000;

function goalOf({ text, aim }: MovedSample): { readonly goal: number; readonly isMost: boolean } {
  const outcome = aimAt(readSource(text), { aim });
  const [bar] = outcome.status === "found" ? outcome.bars : [];
  const [goal] = bar?.goals ?? [];
  if (goal?.after == null) throw new Error(`${aim}: ${outcome.status}`);
  return { goal: goal.after, isMost: goal.sense === "most" };
}

/** What the search comes to, found once: the random one is not to be charged for it. */
const known = new Map<string, ReturnType<typeof goalOf>>();

/** Throws where random places are as good. */
function randomGoal(sample: MovedSample): number {
  const { goal } = randomSearch(sample.text, sample.aim, RANDOM_COUNT);
  // No random place keeps all limits: there is nothing to compare with.
  if (goal === null) return 0;
  const own = known.get(sample.file) ?? goalOf(sample);
  known.set(sample.file, own);
  if (own.isMost ? own.goal <= goal : own.goal >= goal)
    throw new Error(`${sample.file}: ${RANDOM_COUNT} random bars give ${goal}, the search ${own.goal}`);
  return goal;
}

/** One that is balanced by hair, one held back by its bite, one by its mass. */
const BENCHED = ["brass-limpet", "pickled-heron", "lantern-crab"];

export const cases: readonly BenchCase[] = MOVED_SAMPLES.filter(({ file }) =>
  BENCHED.some((start) => file.startsWith(start)),
).flatMap((sample) => [
  {
    area: "aim",
    name: sample.file,
    inputs: sample.aim,
    peer: `${sample.file} at random`,
    target: 1,
    isLong: true,
    run: () => goalOf(sample).goal,
  },
  {
    area: "aim",
    name: `${sample.file} at random`,
    inputs: `${RANDOM_COUNT} bars`,
    isLong: true,
    run: () => randomGoal(sample),
  },
]);
