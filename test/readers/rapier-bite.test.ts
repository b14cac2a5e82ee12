/**
 * How deep a bar bites, as a general engine for rigid bodies has it (Rapier, by its JavaScript build
 * `@dimforge/rapier2d-compat`), beside contacts worked out by hand, the project's stepping and its exact bite.
 */
import { beforeAll, describe, expect, it } from "vitest";
import { biteProfile, contactAt } from "../../geometry/bite/bite.ts";
import { type SteppedTarget, stepper } from "../bite/oracles/first-contact.ts";
import { variedBar } from "../bite/random-bars.ts";
import { type Pair, polygon } from "../support/loops.ts";
import { type EngineBar, engineScene, hollowBar, solidBar, startEngine } from "./rapier-contacts.ts";

beforeAll(startEngine);

/**
 * The engine calls a gap of 3e-6 of the radius touching, and reckons it to 1e-6. A target that closes the gap as
 * fast as it comes is then found that much early; one that grazes, up to some twenty times as much.
 */
const DEPTH = 1e-4;
const TURN = 2 * Math.PI;
const PHASES = 24;
const phases = Array.from({ length: PHASES }, (_, i) => (TURN * (i + 0.5)) / PHASES);

/** Expect each phase to end as `depth` says: null if the target comes abreast of the axis. */
function expectDepths(
  bar: EngineBar,
  target: SteppedTarget,
  advanceMm: number,
  depth: (phase: number) => number | null,
): void {
  const scene = engineScene(bar, target, advanceMm);
  const rim = bar.maxRadiusMm;
  for (const phase of phases) {
    const [own, other] = [scene.depthMm(phase), depth(phase)];
    if (own === null || other === null) {
      expect(own, `phase ${phase}`).toBe(other);
      continue;
    }
    expect(Math.abs(own - other) / rim, `phase ${phase}: ${own}, not ${other}`).toBeLessThan(DEPTH);
  }
  scene.close();
}

describe("thin teeth as the engine meets them", () => {
  const [tip, root] = [100, 20];
  const tooth = (count: number, i: number): Pair[] =>
    [
      [root, 0],
      [root, -0.2],
      [tip, 0],
    ].map(([along = 0, across = 0]): Pair => {
      const [cos, sin] = [Math.cos((TURN * i) / count), Math.sin((TURN * i) / count)];
      return [cos * along - sin * across, sin * along + cos * across];
    });

  // The next face to come round stands φ short of a multiple of a k-th of a turn.
  it.each([1, 2, 3, 4])("%i of them bite as far as the target comes until the next one is there", (count) => {
    const bar = solidBar(
      tip,
      Array.from({ length: count }, (_, i) => tooth(count, i)),
    );
    for (const advance of [1, 11])
      expectDepths(bar, { kind: "edge" }, advance, (phase) => advance * ((TURN - phase) % (TURN / count)));
  });
});

describe("a rectangle as the engine meets it", () => {
  const [long, wide] = [120, 25];
  const rim = Math.hypot(long, wide);
  const corners: Pair[] = [
    [long, wide],
    [-long, wide],
    [-long, -wide],
    [long, -wide],
  ];

  /** The first time something is in touch, by looking every ten-thousandth of a radian and halving. */
  function firstDepth(entry: number, advance: number, touches: (depth: number) => boolean): number | null {
    const step = advance * 1e-4;
    let depth = 0;
    for (; !touches(depth); depth += step) if (depth > entry) return null;
    let [low, high] = [Math.max(0, depth - step), depth];
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (touches(middle)) high = middle;
      else low = middle;
    }
    return high > entry ? null : high;
  }

  /** From a point to the rectangle turned by an angle: what is beside it and what is above it. */
  function distance(x: number, y: number, angle: number): number {
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const beside = Math.max(0, Math.abs(cos * x + sin * y) - long);
    const above = Math.max(0, Math.abs(cos * y - sin * x) - wide);
    return Math.hypot(beside, above);
  }

  it.each([
    [0, 0],
    [0, 40],
    [0, -70],
    [14, 0],
    [14, -30],
    [14, 95],
  ])("bites a disc of radius %i, %i mm off its way", (radiusMm, offsetMm) => {
    const entry = Math.sqrt((rim + radiusMm) ** 2 - offsetMm ** 2);
    const bar = radiusMm > 0 ? solidBar(rim, [corners]) : hollowBar(rim, polygon(corners));
    for (const advance of [6, 35, 400]) {
      expectDepths(bar, { kind: "round", radiusMm, offsetMm }, advance, (phase) =>
        firstDepth(
          entry,
          advance,
          (depth) => distance(entry - depth, offsetMm, phase + depth / advance) <= radiusMm,
        ),
      );
    }
  });

  it("bites a face with its corners", () => {
    for (const advance of [6, 35, 400]) {
      expectDepths(solidBar(rim, [corners]), { kind: "face" }, advance, (phase) =>
        firstDepth(rim, advance, (depth) => {
          const [cos, sin] = [Math.cos(phase + depth / advance), Math.sin(phase + depth / advance)];
          return Math.max(...corners.map(([x, y]) => x * cos - y * sin)) >= rim - depth;
        }),
      );
    }
  });
});

describe("the engine and the steppers agree", () => {
  const targets: readonly SteppedTarget[] = [
    { kind: "edge" },
    { kind: "edge", offsetMm: -30 },
    { kind: "round", radiusMm: 9 },
    { kind: "round", radiusMm: 20, offsetMm: 45 },
    { kind: "face" },
  ];
  it.each([...Array(8).keys()])("on bar %i", (seed) => {
    const outer = variedBar(seed);
    const rim = biteProfile(outer, "ccw").maxRadiusMm;
    const bar = hollowBar(rim, outer);
    targets.forEach((target, i) => {
      const advance = [8, 20, 45][(seed + i) % 3] ?? 8;
      const step = stepper(outer, "ccw", target, advance);
      expectDepths(bar, target, advance, (phase) => {
        const { depthMm, passed } = step(phase);
        return passed ? null : depthMm;
      });
    });
  });
});

describe("the engine and the exact bite agree", () => {
  it.each([
    [3, { kind: "edge", radiusMm: 0, offsetMm: 0 }],
    [4, { kind: "edge", radiusMm: 0, offsetMm: 35 }],
    [5, { kind: "round", radiusMm: 12, offsetMm: 0 }],
    [6, { kind: "round", radiusMm: 7, offsetMm: -50 }],
    [8, { kind: "face", radiusMm: 0, offsetMm: 0 }],
    [11, { kind: "edge", radiusMm: 0, offsetMm: -60 }],
  ] as const)("on bar %i against %o", (seed, target) => {
    const outer = variedBar(seed);
    const profile = biteProfile(outer, "ccw", target);
    for (const advance of [9, 25, 90]) {
      expectDepths(hollowBar(profile.maxRadiusMm, outer), target, advance, (phase) => {
        const { depthMm, point } = contactAt(profile, advance, phase);
        return point === null ? null : depthMm;
      });
    }
  });
});
