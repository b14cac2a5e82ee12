/** One hole more beside those that stand, where it leaves the least; anywhere on the net or near a place. */
import type { Point } from "../../language/design.ts";
import { distance, dot } from "../../outline/vector.ts";
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
import { isInWindow, type Place, placeAt } from "./places.ts";

/** The best place of the net; `null` where there is no room. */
export function placeOnNet(task: SeekTask, others: readonly Pick[]): Pick | null {
  const search = new OneMore(task, others);
  for (const spot of task.spots) search.tryAt(spot, ({ roomMm }) => roomMm <= spot.roomMm);
  return search.best;
}

const MOST_RADIAL_STEPS = 30;
const MOST_ANGLE_STEPS = 12;

/** The best place within a step of the net around a hole, in steps of a shop and so many tenths of a degree. */
export function placeNear(
  task: SeekTask,
  others: readonly Pick[],
  { place: now, option: { roomMm: sureMm } }: Pick,
  tenthsStep: number,
): Pick | null {
  const { stepMm, netMm, metal, window } = task;
  const { radiusSteps, angleTenths } = now;
  const search = new OneMore(task, others);
  // Around the hole as it is there is metal for so far: no edge to have stepped across.
  const isInside = (place: Place) => distance(place, now) < sureMm || metal.holds(place);
  const radialSteps = Math.min(MOST_RADIAL_STEPS, Math.ceil(netMm / stepMm));
  const netTenths = ((netMm / Math.max(stepMm, radiusSteps * stepMm)) * 1800) / Math.PI;
  const angleSteps = Math.min(MOST_ANGLE_STEPS, Math.max(2, Math.ceil(netTenths / tenthsStep)));
  const middle = Math.round(angleTenths / tenthsStep);
  for (let dr = -radialSteps; dr <= radialSteps; dr += 1) {
    if (radiusSteps + dr <= 0) continue;
    for (let da = -angleSteps; da <= angleSteps; da += 1) {
      const place = placeAt(radiusSteps + dr, (middle + da) * tenthsStep, stepMm);
      if (!isInWindow(place, stepMm, window)) continue;
      search.tryAt(place, ({ roomMm }) => metal.toEdgeMm(place, roomMm) >= roomMm && isInside(place));
    }
  }
  return search.best;
}

class OneMore {
  readonly #task: SeekTask;
  readonly #others: readonly Pick[];
  readonly #left: Point;
  /** Mass of the bar without the others. */
  readonly #massG: number;
  best: Pick | null = null;
  #score: Score = NO_SCORE;

  constructor(task: SeekTask, others: readonly Pick[]) {
    this.#task = task;
    this.#others = others;
    this.#left = leftOver(task.load, others);
    this.#massG = task.massG - takenBy(others);
  }

  /** Tries the drills about the thinnest that can take what is wanted here. */
  tryAt(place: Place, hasRoom: (option: HoleOption) => boolean): void {
    const wantedG = dot(this.#left, place) / (place.x * place.x + place.y * place.y);
    const { options } = this.#task;
    let first = options.findIndex((option) => option.mostG >= wantedG);
    if (first < 0) first = options.length - 1;
    // A thicker one than has room: the thickest that has takes the most.
    for (let at = Math.min(first + 1, options.length - 1); at >= 0; at -= 1) {
      const option = options[at];
      if (!option) continue;
      const isTried = this.#tryOption(place, option, wantedG, hasRoom);
      if (isTried && at < first) break;
    }
  }

  /** False where there is no room for it; one that would be no gain counts as tried. */
  #tryOption(
    place: Place,
    option: HoleOption,
    wantedG: number,
    hasRoom: (option: HoleOption) => boolean,
  ): boolean {
    const { leastSteps, mostSteps, baseG, perStepG } = option;
    const wanted = perStepG === 0 ? 0 : Math.floor((wantedG - baseG) / perStepG);
    const first = Math.min(mostSteps, Math.max(leastSteps, wanted));
    const depths = first < mostSteps && first === wanted ? [first, first + 1] : [first];
    for (const steps of depths) {
      const massG = baseG + perStepG * steps;
      const left = Math.hypot(this.#left.x - massG * place.x, this.#left.y - massG * place.y);
      const score = scoreFor(left, massG, this.#massG - massG, this.#task.aimMm);
      if (!isBetter(score, this.#score)) continue;
      const { bridgeMm } = this.#task;
      if (!this.#others.every((other) => isApart(place, option, other, bridgeMm))) return false;
      if (!hasRoom(option)) return false;
      this.best = { place, option, steps, massG };
      this.#score = score;
    }
    return true;
  }
}
