import type { AimTask } from "./aim-task.ts";
import type { BestSoFar } from "./aiming.ts";
import { bestFirst, isFeasible, type Measured, missOf, type Place, rateBy, type Tried } from "./rating.ts";
import { type FrontPlace, nonDominated } from "./search-front.ts";

/** What a search has found so far, to be shown while it goes on and to be kept when it is stopped. */
export interface Found {
  add(at: Place, measured: Measured): void;
  /** The best place, whether or not it is feasible; for two goals by the first. Null before the first. */
  best(): Tried | null;
  /** For two goals the feasible places of which none is better in both. */
  line(): readonly FrontPlace[];
  shown(): readonly BestSoFar[];
}

/** Places nearer together than this share of the line are one on it. */
const SAME_SHARE = 1e-3;
/** More are not kept: nobody looks at more points of a line. */
const MOST_KEPT = 200;

export function createFound({ goals, valuesAt }: AimTask): Found {
  const rate = rateBy(0);
  let best: Tried | null = null;
  let line: readonly FrontPlace[] = [];
  return {
    add: (at, measured) => {
      const tried = { at, rating: rate(measured) };
      if (best === null || bestFirst(tried, best) < 0) best = tried;
      if (goals.length > 1 && missOf(measured) === 0) line = withPlace(line, { at, measured });
    },
    best: () => best,
    line: () => line,
    shown: () => {
      const shownOf = ({ at, measured }: FrontPlace): BestSoFar => ({
        values: valuesAt(at),
        goals: goals.map((goal, i) => goal.shown(measured.goals[i]?.value ?? Number.NaN)),
        isFeasible: isFeasible(measured),
      });
      if (line.length > 0) return line.map(shownOf);
      return best === null ? [] : [shownOf({ at: best.at, measured: best.rating.measured })];
    },
  };
}

/** In the order of the first goal. */
function withPlace(line: readonly FrontPlace[], place: FrontPlace): readonly FrontPlace[] {
  const [a, b] = valuesOf(place);
  const isNothingNew = line.some((other) => {
    const [otherA, otherB] = valuesOf(other);
    return otherA <= a + SAME_SHARE * spanOf(line, 0) && otherB <= b + SAME_SHARE * spanOf(line, 1);
  });
  if (isNothingNew || !isFeasible(place.measured)) return line;
  const next = [...nonDominated([...line, place])].sort(
    (one, other) => valuesOf(one)[0] - valuesOf(other)[0],
  );
  return next.length > MOST_KEPT ? line : next;
}

function valuesOf({ measured }: FrontPlace): readonly [number, number] {
  return [measured.goals[0]?.value ?? 0, measured.goals[1]?.value ?? 0];
}

function spanOf(line: readonly FrontPlace[], goal: 0 | 1): number {
  const [first, last] = [line[0], line.at(-1)];
  return first && last ? Math.abs(valuesOf(first)[goal] - valuesOf(last)[goal]) : 0;
}
