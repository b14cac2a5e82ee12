/**
 * Random numbers that are the same for the same seed on every machine: PCG32, a 64-bit linear congruential generator
 * with permuted output (M. E. O'Neill, "PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for
 * Random Number Generation", 2014), in halves of 32 bits since a double has no 64.
 */
export class Pcg32 {
  #high = 0;
  #low = 0;
  readonly #incrementHigh: number;
  readonly #incrementLow: number;

  /**
   * @param seed a whole number from 0 to 2^53
   * @param stream likewise: different streams of one seed have nothing to do with each other
   */
  constructor(seed: number, stream = 54) {
    const [seedHigh, seedLow] = halves(seed);
    const [streamHigh, streamLow] = halves(stream);
    this.#incrementHigh = ((streamHigh << 1) | (streamLow >>> 31)) >>> 0;
    this.#incrementLow = ((streamLow << 1) | 1) >>> 0;
    this.#step();
    this.#add(seedHigh, seedLow);
    this.#step();
  }

  /** The next whole number from 0 to 2^32 − 1. */
  next(): number {
    const [high, low] = [this.#high, this.#low];
    this.#step();
    // ((state >> 18) ^ state) >> 27, its low 32 bits.
    const mixedHigh = (high >>> 18) ^ high;
    const mixedLow = ((low >>> 18) | (high << 14)) ^ low;
    const shifted = (mixedLow >>> 27) | (mixedHigh << 5);
    const turn = high >>> 27;
    return ((shifted >>> turn) | (shifted << (-turn & 31))) >>> 0;
  }

  /** Evenly between 0 and 1, neither of them. */
  share(): number {
    return (this.next() + 0.5) / TWO_32;
  }

  #step(): void {
    const high = this.#high;
    const low = this.#low;
    // state × multiplier, modulo 2^64.
    this.#low = Math.imul(low, MULTIPLIER_LOW) >>> 0;
    this.#high =
      (highProduct(low, MULTIPLIER_LOW) +
        Math.imul(high, MULTIPLIER_LOW) +
        Math.imul(low, MULTIPLIER_HIGH)) >>>
      0;
    this.#add(this.#incrementHigh, this.#incrementLow);
  }

  #add(high: number, low: number): void {
    const sum = this.#low + low;
    this.#low = sum >>> 0;
    this.#high = (this.#high + high + (sum >= TWO_32 ? 1 : 0)) >>> 0;
  }
}

const TWO_32 = 2 ** 32;
/** 6364136223846793005. */
const MULTIPLIER_HIGH = 0x5851f42d;
const MULTIPLIER_LOW = 0x4c957f2d;

function halves(value: number): readonly [high: number, low: number] {
  return [Math.floor(value / TWO_32) >>> 0, value >>> 0];
}

/** The high 32 bits of a product of two whole numbers of 32 bits. */
function highProduct(a: number, b: number): number {
  const [a1, a0] = [a >>> 16, a & 0xffff];
  const [b1, b0] = [b >>> 16, b & 0xffff];
  const middle = a1 * b0 + ((a0 * b0) >>> 16);
  const carried = a0 * b1 + (middle & 0xffff);
  return a1 * b1 + Math.floor(middle / 0x10000) + Math.floor(carried / 0x10000);
}
