/** Against brute force: every figure of the bite, on bars at random, both ways round. */
import { describe, expect, it } from "vitest";
import { biteAt, biteProfile } from "../../geometry/bite/bite.ts";
import { randomBar, seeded } from "./random-bars.ts";
import { RAD_PER_S, SQUARE_RAD } from "./spin.ts";
import { stepBite } from "./stepping.ts";

const DEPTH_SHARE = 1e-4;
const SHARE = 2e-3;

describe("stepping agrees", () => {
  it.each([...Array(100).keys()])("on bar %i", (seed) => {
    const outer = randomBar(seed);
    const direction = Math.floor(seed / 3) % 2 === 0 ? "ccw" : "cw";
    // From a hundredth of a turn's worth of bite to more than the bar can take.
    const advance = 0.1 * 500 ** seeded(seed + 1000)();
    const profile = biteProfile(outer, direction);
    const bite = biteAt(profile, {
      closingMPerS: (advance * RAD_PER_S) / 1000,
      radPerS: RAD_PER_S,
      squareStrikeRad: SQUARE_RAD,
    });
    const stepped = stepBite(outer, direction, advance);
    expect(Math.abs(bite.maxMm - stepped.maxMm)).toBeLessThan(DEPTH_SHARE * profile.maxRadiusMm);
    expect(Math.abs(bite.meanMm - stepped.meanMm)).toBeLessThan(DEPTH_SHARE * profile.maxRadiusMm);
    stepped.shares.forEach((share, segment) => {
      const own = bite.strikes.find(({ place }) => place.index === segment)?.share ?? 0;
      expect(Math.abs(own - share), `share of segment ${segment}`).toBeLessThan(SHARE);
    });
  });
});
