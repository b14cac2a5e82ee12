/**
 * Where the checker begins to refuse a bar there is no slope to follow: it says yes or no. The wall that a step runs into
 * is felt out by halving, at the step and beside it, and is kept as a plane that the next steps slide along.
 */
import { clamped, type Place, type Rating, type Steps, type Tried } from "./rating.ts";

/** Places on the near side have normal·place ≤ offset. */
export interface Wall {
  readonly normal: readonly number[];
  readonly offset: number;
}

const ALONG_HALVINGS = 24;
/** How far beside the step the wall is looked for again. */
const ASIDE = 1e-3;
/** Beyond so many times that distance along the step, the wall is another one. */
const MOST_SLANT = 8;
const ASIDE_HALVINGS = 14;

/** The wall between a place that the checker likes and one that it does not; null where the two are one. */
export function* feelWall(
  here: Tried,
  refused: Place,
): Steps<{ readonly wall: Wall; readonly nearest: Tried } | null> {
  const step = refused.map((value, i) => value - (here.at[i] ?? 0));
  const length = Math.hypot(...step);
  if (length < 1e-12) return null;
  let nearest = here;
  let [free, closed] = [0, 1];
  for (let halving = 0; halving < ALONG_HALVINGS; halving += 1) {
    const share = (free + closed) / 2;
    const at = along(here.at, step, share);
    const rating = yield at;
    if (isRefused(rating)) closed = share;
    else {
      free = share;
      if (rating !== null) nearest = { at, rating };
    }
  }
  const slants: number[] = [];
  for (const i of here.at.keys()) slants.push(yield* slantAlong(here.at, step, free, i));
  // normal·step = 1, and each neighbour's crossing says how the normal leans: normal·(aside + slant·step) = 0.
  const normal = leastNormal(step, slants);
  const offset = normal.reduce((sum, value, i) => sum + value * (nearest.at[i] ?? 0), 0);
  return { wall: { normal, offset }, nearest };
}

function isRefused(rating: Rating | null): boolean {
  return rating === null || rating.faults() > 0;
}

function along(at: Place, step: readonly number[], share: number): Place {
  return clamped(at.map((value, i) => value + share * (step[i] ?? 0)));
}

/** How much farther along the step the wall stands, a unit aside by one let. */
function* slantAlong(at: Place, step: readonly number[], share: number, index: number): Steps<number> {
  const side = (at[index] ?? 0) + ASIDE <= 1 ? ASIDE : -ASIDE;
  const beside = at.map((value, i) => (i === index ? value + side : value));
  const reach = (MOST_SLANT * ASIDE) / Math.hypot(...step);
  let [free, closed] = [share - reach, share + reach];
  for (let halving = 0; halving < ASIDE_HALVINGS; halving += 1) {
    const middle = (free + closed) / 2;
    const rating = yield along(beside, step, middle);
    if (isRefused(rating)) closed = middle;
    else free = middle;
  }
  return ((free + closed) / 2 - share) / side;
}

/** normal_i = −slant_i, made so that normal·step = 1 as well as it goes: the slants of a plane agree with it already. */
function leastNormal(step: readonly number[], slants: readonly number[]): readonly number[] {
  const normal = slants.map((slant) => -slant);
  const scale = normal.reduce((sum, value, i) => sum + value * (step[i] ?? 0), 0);
  const size = Math.hypot(...normal);
  // Leaning nowhere that could be felt, it stands across the step.
  const whole = size === 0 || !(scale > 0.1) ? step : normal;
  const length = Math.hypot(...whole);
  return whole.map((value) => value / length);
}
