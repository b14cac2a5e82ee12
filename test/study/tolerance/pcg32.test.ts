import { describe, expect, it } from "vitest";
import { deviation, SPREADS, unitVariance } from "../../../geometry/study/tolerance/deviation.ts";
import { Pcg32 } from "../../../geometry/study/tolerance/pcg32.ts";
import { expectClose } from "../../support/close-to.ts";

/** The generator as published, in whole numbers of 64 bits. */
function* published(seed: bigint, stream: bigint): Generator<number> {
  const mask = (1n << 64n) - 1n;
  const increment = ((stream << 1n) | 1n) & mask;
  const step = (state: bigint) => (state * 6364136223846793005n + increment) & mask;
  let state = step((step(0n) + seed) & mask);
  for (;;) {
    const shifted = ((((state >> 18n) ^ state) & mask) >> 27n) & 0xffffffffn;
    const turn = state >> 59n;
    yield Number(((shifted >> turn) | (shifted << (-turn & 31n))) & 0xffffffffn);
    state = step(state);
  }
}

describe("PCG32", () => {
  it("gives the published numbers of its demonstration, seed 42 and stream 54", () => {
    const random = new Pcg32(42, 54);
    expect(Array.from({ length: 6 }, () => random.next())).toEqual([
      0xa15c02b7, 0x7b47f409, 0xba1d3330, 0x83d2f293, 0xbfa4784b, 0xcbed606e,
    ]);
  });

  it.each([0, 1, 7, 2 ** 31, 2 ** 32 - 1, 2 ** 32 + 5, 2 ** 53 - 1])(
    "agrees with 64-bit arithmetic, seed %d",
    (seed) => {
      const random = new Pcg32(seed, seed);
      const other = published(BigInt(seed), BigInt(seed));
      for (let i = 0; i < 2000; i++) expect(random.next()).toBe(other.next().value);
    },
  );
});

describe("a deviation within limits", () => {
  it.each(SPREADS)("of the %s kind has no mean and the variance that is reckoned with", (spread) => {
    const random = new Pcg32(3);
    const count = 200_000;
    let [sum, squares, beyond] = [0, 0, 0];
    for (let i = 0; i < count; i++) {
      const value = deviation(spread, random);
      sum += value;
      squares += value * value;
      if (Math.abs(value) > 1) beyond += 1;
    }
    // Five standard errors of the mean.
    expect(Math.abs(sum / count)).toBeLessThan(5 * Math.sqrt(unitVariance(spread) / count));
    expectClose(squares / count, unitVariance(spread), 0.01);
    // Beyond two sigma: 4.55 % (tables of the normal distribution).
    if (spread === "normal") expectClose(beyond / count, 0.0455, 0.05);
    else expect(beyond).toBe(0);
  });

  it("is 1/3 for one uniform, 2/3 for the sum of two (variance of a sum)", () => {
    const random = new Pcg32(9);
    let squares = 0;
    for (let i = 0; i < 100_000; i++)
      squares += (deviation("uniform", random) + deviation("uniform", random)) ** 2;
    expectClose(squares / 100_000, 2 / 3, 0.02);
  });
});
