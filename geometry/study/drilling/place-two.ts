/**
 * Two holes at once: their masses follow from their places, m₁p₁ + m₂p₂ = what is left. Two holes to both hands of the
 * heavy side do what none on it can where the bar is narrow there, or where one through hole takes too much.
 */
import type { Point } from "../../language/design.ts";
import { cross, distance } from "../../outline/vector.ts";
import type { HoleOption } from "./hole-options.ts";
import {
  isApart,
  isBetter,
  leftOver,
  NO_SCORE,
  type Pick,
  type Score,
  type SeekTask,
  scoreFor,
  takenBy,
} from "./picks.ts";
import type { Spot } from "./places.ts";

/** So many places of the net are tried against each other: all pairs of them. */
const PAIRED_SPOTS = 260;

/** The best pair of places, first on a sparse choice of the net, then around what that found. */
export function placeTwo(task: SeekTask, others: readonly Pick[]): readonly [Pick, Pick] | null {
  const { spots } = task;
  const free = spots.filter((spot) => {
    const [thinnest] = task.options;
    return thinnest && others.every((other) => isApart(spot, thinnest, other, task.bridgeMm));
  });
  const stride = Math.max(1, Math.ceil(free.length / PAIRED_SPOTS));
  const some = free.filter((_, i) => i % stride === 0);
  const search = new TwoMore(task, others);
  search.tryAll(some, some);
  if (!search.best || stride === 1) return search.best;
  const [a, b] = search.best;
  // The choice is as sparse as this: around each place there are as many again.
  const reachMm = task.netMm * Math.sqrt(stride);
  const around = ({ place }: Pick) => free.filter((spot) => distance(spot, place) <= reachMm);
  search.tryAll(around(a), around(b));
  return search.best;
}

class TwoMore {
  readonly #task: SeekTask;
  readonly #left: Point;
  readonly #others: readonly Pick[];
  /** Mass of the bar without the others. */
  readonly #massG: number;
  best: readonly [Pick, Pick] | null = null;
  #score: Score = NO_SCORE;

  constructor(task: SeekTask, others: readonly Pick[]) {
    this.#task = task;
    this.#others = others;
    this.#left = leftOver(task.load, others);
    this.#massG = task.massG - takenBy(others);
  }

  tryAll(firsts: readonly Spot[], seconds: readonly Spot[]): void {
    for (const a of firsts) for (const b of seconds) if (a !== b) this.#tryPair(a, b);
  }

  #tryPair(a: Spot, b: Spot): void {
    const determinant = cross(a, b);
    if (determinant === 0) return;
    const first = this.#holeOf(a, cross(this.#left, b) / determinant);
    const second = first && this.#holeOf(b, cross(a, this.#left) / determinant);
    if (!first || !second) return;
    const x = this.#left.x - first.massG * a.x - second.massG * b.x;
    const y = this.#left.y - first.massG * a.y - second.massG * b.y;
    const takenG = first.massG + second.massG;
    const { aimMm, bridgeMm } = this.#task;
    const score = scoreFor(Math.hypot(x, y), takenG, this.#massG - takenG, aimMm);
    if (!isBetter(score, this.#score)) return;
    if (!isApart(a, first.option, second, bridgeMm)) return;
    const isFree = ({ place, option }: Pick) =>
      this.#others.every((other) => isApart(place, option, other, bridgeMm));
    if (!isFree(first) || !isFree(second)) return;
    this.best = [first, second];
    this.#score = score;
  }

  /** The thinnest drill that takes so much there, or what comes nearest; `null` where metal would have to be added. */
  #holeOf(spot: Spot, wantedG: number): Pick | null {
    if (!(wantedG > 0)) return null;
    let chosen: HoleOption | null = null;
    for (const option of this.#task.options) {
      if (option.roomMm > spot.roomMm) break;
      const isNearer = !chosen || option.perStepG > 0 || nearer(option, chosen, wantedG);
      if (isNearer) chosen = option;
      if (option.mostG >= wantedG) break;
    }
    if (!chosen) return null;
    const { leastSteps, mostSteps, baseG, perStepG } = chosen;
    const wanted = perStepG === 0 ? 0 : Math.round((wantedG - baseG) / perStepG);
    const steps = Math.min(mostSteps, Math.max(leastSteps, wanted));
    return { place: spot, option: chosen, steps, massG: baseG + perStepG * steps };
  }
}

function nearer(option: HoleOption, other: HoleOption, wantedG: number): boolean {
  return Math.abs(option.baseG - wantedG) < Math.abs(other.baseG - wantedG);
}
