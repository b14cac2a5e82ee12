/** Numbers that look random and are the same in each run. */
import { Pcg32 } from "../tolerance/pcg32.ts";

/** Gives the next number between 0 and 1, neither of them. */
export type Random = () => number;

export function seededRandom(seed: number): Random {
  const generator = new Pcg32(seed);
  return () => generator.share();
}

const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29];

/**
 * Places that fill the unit cube evenly, however many are taken: Halton's sequence (1960), turned by a random shift of
 * each coordinate (Cranley and Patterson 1976).
 * @throws RangeError for more than ten dimensions: the sequence is no longer even there
 */
export function evenPlaces(
  dimensions: number,
  count: number,
  random: Random,
): readonly (readonly number[])[] {
  const bases = PRIMES.slice(0, dimensions);
  if (bases.length < dimensions)
    throw new RangeError(`${dimensions} dimensions are more than ${PRIMES.length}`);
  const shifts = bases.map(() => random());
  return Array.from({ length: count }, (_, index) =>
    bases.map((base, i) => (radicalInverse(index + 1, base) + (shifts[i] ?? 0)) % 1),
  );
}

/** The digits of a whole number in a base, mirrored at the point. */
function radicalInverse(index: number, base: number): number {
  let [rest, share, sum] = [index, 1 / base, 0];
  while (rest > 0) {
    sum += (rest % base) * share;
    rest = Math.floor(rest / base);
    share /= base;
  }
  return sum;
}
