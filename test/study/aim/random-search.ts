/** The plainest search there is, for comparison: places at random, the best one kept by the same rules. */
import { readSource } from "../../../geometry/analysis/source.ts";
import { aimTask } from "../../../geometry/study/aim/aim-task.ts";
import { bestFirst, isFeasible, rateBy, type Tried } from "../../../geometry/study/aim/rating.ts";
import { seededRandom } from "../../../geometry/study/aim/seeded.ts";

export interface RandomBest {
  /** The first goal in the unit of its figure, before any rounding; null where no place was feasible. */
  readonly goal: number | null;
}

/** The best of so many random places, the bar as it is not among them. Throws for an aim that is refused. */
export function randomSearch(text: string, aim: string, count: number, seed = 1): RandomBest {
  const task = aimTask(readSource(text), { aim });
  if ("reason" in task) throw new Error(task.message);
  const random = seededRandom(seed);
  let best: Tried | null = null;
  for (let i = 0; i < count; i += 1) {
    const at = task.lets.map(() => random());
    const measured = task.measure(at);
    if (measured === null) continue;
    const tried = { at, rating: rateBy(0)(measured) };
    if (best === null || bestFirst(tried, best) < 0) best = tried;
  }
  if (best === null || !isFeasible(best.rating)) return { goal: null };
  return { goal: task.goals[0]?.shown(best.rating.goal) ?? null };
}
