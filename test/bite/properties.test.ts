/** What must hold for any bar, at any speed. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { biteAt, biteCurve, biteProfile, cleanBite } from "../../geometry/bite/bite.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { mirroredLoop, movedLoop, reversedLoop, turn } from "../../geometry/outline/transform.ts";
import { expectClose } from "../support/close-to.ts";
import { randomBar } from "./random-bars.ts";
import { RAD_PER_S, SPIN, SQUARE_RAD } from "./spin.ts";

const RUNS = { numRuns: 60, seed: 20 };
const bar = fc.integer({ min: 0, max: 1e6 });
const direction = fc.constantFrom("ccw" as const, "cw" as const);
/** 0.01 to 100 m/s, evenly in ratio. */
const speed = fc.double({ min: -2, max: 2, noNaN: true }).map((power) => 10 ** power);

/** The figures with a scale each: depths in mm, shares of 1. */
function figures(outer: Loop, sense: "ccw" | "cw", closingMPerS: number, radPerS = RAD_PER_S): number[] {
  const profile = biteProfile(outer, sense);
  const bite = biteAt(profile, { closingMPerS, radPerS, squareStrikeRad: SQUARE_RAD });
  return [bite.maxMm / 100, bite.meanMm / 100, bite.squareShare, bite.cleanShare];
}

/**
 * A shift of the bar's digits by rounding moves where shadows end; figures follow by that much against the
 * period, and the deepest bite of a grazed tip can jump, so bars within rounding of a jump are met with a
 * tolerance well above it.
 */
function expectSame(a: readonly number[], b: readonly number[], tolerance = 1e-6): void {
  a.forEach((value, i) => {
    expect(Math.abs(value - (b[i] ?? Number.NaN)), `figure ${i}: ${a} against ${b}`).toBeLessThan(tolerance);
  });
}

describe("the bite of any bar", () => {
  it("shares out all strikes, within the outline", () => {
    fc.assert(
      fc.property(bar, direction, speed, (seed, sense, closing) => {
        const outer = randomBar(seed);
        const profile = biteProfile(outer, sense);
        const { strikes, maxMm, meanMm, squareShare, cleanShare } = biteAt(profile, {
          ...SPIN,
          closingMPerS: closing,
        });
        expectClose(
          strikes.reduce((sum, { share }) => sum + share, 0),
          1,
          1e-9,
        );
        expect(Math.min(...strikes.map(({ depthMm }) => depthMm.least))).toBeLessThan(1e-9);
        expect(Math.max(...strikes.map(({ depthMm }) => depthMm.most))).toBeCloseTo(maxMm, 9);
        expect(meanMm).toBeLessThanOrEqual(maxMm);
        expect(squareShare).toBeLessThanOrEqual(1 + 1e-9);
        expect(cleanShare).toBeLessThanOrEqual(squareShare);
        for (const { parts, radiusMm, strikeAngleRad } of strikes) {
          for (const part of parts)
            expect(0 <= part.least && part.least <= part.most && part.most <= 1).toBe(true);
          expect(radiusMm.most).toBeLessThanOrEqual(profile.maxRadiusMm);
          // No face is struck that runs away faster than the target follows: the heading lies left of the
          // rays.
          expect(strikeAngleRad.most).toBeLessThan(Math.PI);
        }
      }),
      RUNS,
    );
  });

  it("depends on the closing speed over the spin alone", () => {
    fc.assert(
      fc.property(
        bar,
        direction,
        speed,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (seed, sense, v, by) => {
          const outer = randomBar(seed);
          expectSame(figures(outer, sense, v), figures(outer, sense, v * by, RAD_PER_S * by));
        },
      ),
      RUNS,
    );
  });

  it("stays when the bar is drawn turned", () => {
    fc.assert(
      fc.property(
        bar,
        direction,
        speed,
        fc.double({ min: -4, max: 4, noNaN: true }),
        (seed, sense, v, angle) => {
          const outer = randomBar(seed);
          expectSame(figures(outer, sense, v), figures(movedLoop(outer, turn(angle)), sense, v));
        },
      ),
      RUNS,
    );
  });

  it("stays when the bar is mirrored and turns the other way", () => {
    fc.assert(
      fc.property(bar, fc.constantFrom("x" as const, "y" as const), speed, (seed, axis, v) => {
        const outer = randomBar(seed);
        const mirrored = reversedLoop(mirroredLoop(outer, axis));
        expectSame(figures(outer, "ccw", v), figures(mirrored, "cw", v));
      }),
      RUNS,
    );
  });

  it("grows with the bar when the target comes faster in proportion", () => {
    fc.assert(
      fc.property(
        bar,
        direction,
        speed,
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        (seed, sense, v, by) => {
          const outer = randomBar(seed);
          const [max = 0, mean = 0, ...shares] = figures(scaledLoop(outer, by), sense, v * by);
          expectSame(figures(outer, sense, v), [max / by, mean / by, ...shares]);
        },
      ),
      RUNS,
    );
  });

  it("changes its mean and its shares evenly with the closing speed", () => {
    fc.assert(
      fc.property(bar, direction, speed, (seed, sense, v) => {
        const outer = randomBar(seed);
        const [, mean = 0, square = 0, clean = 0] = figures(outer, sense, v);
        const [, meanNext = 0, squareNext = 0, cleanNext = 0] = figures(outer, sense, v * (1 + 1e-9));
        expectSame([mean, square, clean], [meanNext, squareNext, cleanNext]);
      }),
      RUNS,
    );
  });

  it("has a clean share of 1 exactly where the clean bite says so", () => {
    fc.assert(
      fc.property(bar, direction, speed, (seed, sense, v) => {
        const outer = randomBar(seed);
        const profile = biteProfile(outer, sense);
        const clean = cleanBite(profile, SPIN).closingMPerS;
        const below = Math.min(v, (clean ?? v) * 0.999);
        if (below > 0) expectClose(biteAt(profile, { ...SPIN, closingMPerS: below }).cleanShare, 1, 1e-9);
      }),
      RUNS,
    );
  });
});

describe("the bite curve", () => {
  const profile = biteProfile(randomBar(7), "ccw");

  it("has the speeds asked for, ends exact, each with its own bite", () => {
    const curve = biteCurve(profile, { ...SPIN, fromMPerS: 0.1, toMPerS: 0.7, count: 7 });
    expect(curve.map(({ closingMPerS }) => closingMPerS).map((v) => v.toFixed(6))).toEqual(
      [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7].map((v) => v.toFixed(6)),
    );
    expect([curve[0]?.closingMPerS, curve[6]?.closingMPerS]).toEqual([0.1, 0.7]);
    for (const { closingMPerS, ...bite } of curve) {
      const alone = biteAt(profile, { ...SPIN, closingMPerS });
      expect(bite).toEqual(alone);
      expect(alone.strikes.length).toBeGreaterThan(0);
    }
  });

  it("is finite from a standstill to any speed", () => {
    for (const closingMPerS of [0, 1e-9, 1e-3, 1e6, 1e12]) {
      const bite = biteAt(profile, { ...SPIN, closingMPerS });
      expect([bite.maxMm, bite.meanMm, bite.squareShare].every(Number.isFinite)).toBe(true);
      expectClose(
        bite.strikes.reduce((sum, { share }) => sum + share, 0),
        1,
        1e-6,
      );
    }
    expect(biteAt(profile, { ...SPIN, closingMPerS: 0 }).maxMm).toBeLessThan(1e-6);
  });
});

describe("a loop that cannot be asked about", () => {
  it("is refused: the axis outside", () => {
    const outer = randomBar(3);
    const away = { ...outer, segments: outer.segments.map((segment) => movedBy(segment, 500)) };
    expect(() => biteProfile(away, "ccw")).toThrow(RangeError);
    expect(() => biteProfile(reversedLoop(outer), "ccw")).toThrow(RangeError);
  });
});

function movedBy<T extends Loop["segments"][number]>(segment: T, dx: number): T {
  const moved = (p: { x: number; y: number }) => ({ x: p.x + dx, y: p.y });
  const ends = { from: moved(segment.from), to: moved(segment.to) };
  return segment.kind === "arc"
    ? { ...segment, ...ends, centre: moved(segment.centre) }
    : { ...segment, ...ends };
}

function scaledLoop(outer: Loop, by: number): Loop {
  const scaled = (p: { x: number; y: number }) => ({ x: p.x * by, y: p.y * by });
  const segments = outer.segments.map((segment) => {
    const ends = { from: scaled(segment.from), to: scaled(segment.to) };
    return segment.kind === "line"
      ? { ...segment, ...ends }
      : { ...segment, ...ends, centre: scaled(segment.centre), radiusMm: segment.radiusMm * by };
  });
  return { ...outer, segments };
}
