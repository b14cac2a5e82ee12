/** The rare turns of the walk in light and shade, each on an outline made for it, checked ray by ray. */
import { describe, expect, it } from "vitest";
import { biteAt, biteProfile } from "../../geometry/bite/bite.ts";
import { steepnessAt } from "../../geometry/bite/curve.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { mirroredLoop, reversedLoop } from "../../geometry/outline/transform.ts";
import {
  arc,
  bulgeLoop,
  bulgeSegment,
  chain,
  line,
  type Pair,
  polygon,
  rectangle,
} from "../support/loops.ts";
import { envelopeFaults } from "./envelope.ts";
import { randomBar } from "./random-bars.ts";
import { behind, offered, SPIN } from "./spin.ts";

function expectSound(outer: Loop, advances: readonly number[], rays = 30): void {
  const ccw = biteProfile(outer, "ccw");
  const cw = biteProfile(reversedLoop(mirroredLoop(outer, "y")), "cw");
  for (const profile of [ccw, cw]) {
    for (const advance of advances)
      expect(envelopeFaults(profile, advance, rays), `at ${advance}`).toEqual([]);
  }
}

/**
 * An outline given by what an edge at a certain advance sees of it: x tells the rays apart, r is the radius,
 * so that θ = (x − r)/advance. Sides straight in x and r are drawn with many chords.
 */
function seenAt(advance: number, corners: readonly Pair[]): Loop {
  const points = corners.flatMap((from, i): Pair[] => {
    const to: Pair = corners[i + 1] ?? [(corners[0]?.[0] ?? 0) + 2 * Math.PI * advance, corners[0]?.[1] ?? 0];
    const chords = Math.max(1, Math.ceil(Math.abs(to[0] - to[1] - from[0] + from[1]) / (advance * 0.05)));
    return Array.from({ length: chords }, (_, k): Pair => {
      const [x, r] = [0, 1].map((c) => (from[c] ?? 0) + (((to[c] ?? 0) - (from[c] ?? 0)) * k) / chords) as [
        number,
        number,
      ];
      return behind(r, (x - r) / advance / (2 * Math.PI));
    });
  });
  return polygon(offered(points));
}

describe("a pocket", () => {
  /*
   *   T ──── M                       The outline falls from T to M and runs back under it into a pocket; out along the
   *    \    /    ┌────────── …       pocket's floor, it turns over and slips back in behind M (1), out again below its
   *     \  │ ┌───┘ ◄──1──┐           own way in (2), in again (3), and out at last above all of it (4). Only the stretch
   *        │ │ ┌────2─►┐ │           after (4) is in the light.
   *        │ └─│──◄─3──┘ │
   *        └───floor─────┘
   */
  const spiral: Pair[] = [
    [100, 100],
    [150, 90],
    [110, 60],
    [110, 40],
    [200, 35],
    [205, 45],
    [125, 62],
    [125, 57],
    [180, 46],
    [180, 43],
    [118, 52],
    [118, 64],
    [210, 60],
    [300, 70],
    [380, 60],
  ];

  it("entered and left again below the way in stays dark", () => {
    const outer = seenAt(50, spiral);
    expectSound(outer, [50, 48, 53, 30, 80], 50);
    const bite = biteAt(biteProfile(outer, "ccw"), { ...SPIN, closingMPerS: (50 * SPIN.radPerS) / 1000 });
    // Behind M the light goes on at the stretch (4), on which the spiral ends: 62.6 mm out.
    expect(bite.strikes.some(({ radiusMm }) => radiusMm.least > 30 && radiusMm.least < 59)).toBe(false);
  });

  it("entered and left above the way in lights up again", () => {
    const simple: Pair[] = [...spiral.slice(0, 6), [125, 62], [125, 65], [210, 60], [300, 70], [380, 60]];
    expectSound(seenAt(50, simple), [50, 48, 53, 30, 80], 50);
  });
});

describe("a cusp", () => {
  // A horn whose straight front and round back meet in one direction, and a crack that ends the same way.
  const horn = (root: Pair, tip: Pair, foot: Pair) => [line(root, tip), tangentArc(tip, root, foot)] as const;

  it("in a horn and in a crack is folded on the right side", () => {
    const [a, b, c, d] = [behind(50, 0.4), behind(92, 0.45), behind(45, 0.47), behind(55, 0.2)];
    const toRoot = [behind(50, 0.6), behind(50, 0.8)];
    const inOrder = chain([
      line(behind(50, 0), behind(100, 0)),
      line(behind(100, 0), d),
      line(d, behind(40, 0.28)),
      tangentArc(behind(40, 0.28), d, behind(50, 0.33)),
      line(behind(50, 0.33), a),
      ...horn(a, b, c),
      line(c, toRoot[0] ?? c),
      line(toRoot[0] ?? c, toRoot[1] ?? c),
      line(toRoot[1] ?? c, behind(50, 0)),
    ]);
    expectSound(reversedLoop(inOrder), [0.5, 3, 8, 12, 25, 60, 300]);
  });
});

/** The arc that leaves `at` straight back towards `back`, and ends at `to`. */
function tangentArc(at: Pair, back: Pair, to: Pair) {
  const [ux, uy] = [back[0] - at[0], back[1] - at[1]];
  const [vx, vy] = [to[0] - at[0], to[1] - at[1]];
  const half = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  return bulgeSegment(at, to, Math.tan(half / 2));
}

describe("a smooth joint", () => {
  // At the slope of the joint itself the rays touch the outline exactly where two pieces meet.
  it.each([...Array(6).keys()].map((i) => i + 300))("of bar %i is passed at the very slope of it", (seed) => {
    const outer = randomBar(seed);
    const slopes = biteProfile(outer, "ccw").pieces.map(({ curve, to }) => steepnessAt(curve, to));
    expectSound(outer, slopes.filter((slope) => slope > 0.5 && slope < 200).slice(0, 5), 12);
  });

  it("of a round that continues a side is passed at its slope", () => {
    const bullet = bulgeLoop([
      [-60, -20, 0],
      [80, -20, Math.tan(Math.PI / 8)],
      [100, 0, 0],
      [-60, 70, 0],
    ]);
    const slopes = biteProfile(bullet, "ccw").pieces.flatMap(({ curve, from, to }) => [
      steepnessAt(curve, from),
      steepnessAt(curve, to),
    ]);
    expectSound(
      bullet,
      slopes.filter((slope) => slope > 0.01 && slope < 1e4),
    );
  });
});

describe("a smooth joint on the edge of a shadow", () => {
  // The back of a tooth in two rounds, the tighter one second: at the slope of their joint that is where the
  // shadow starts.
  const [wide, tight] = [Math.hypot(60, 10), 25];
  const [tipAt, jointAt, endAt] = [Math.atan2(-10, 60), Math.atan2(-10, 60) - 0.4, Math.atan2(-10, 60) - 1.4];
  const middle: Pair = [40 + (wide - tight) * Math.cos(jointAt), 10 + (wide - tight) * Math.sin(jointAt)];
  const outer = chain([
    arc(middle, tight, endAt, jointAt - endAt),
    arc([40, 10], wide, jointAt, tipAt - jointAt),
    line([100, 0], [50, 0]),
    ...[0, 0.75, 0.5, 0.25].map((turns) => line(behind(turns === 0.75 ? 85 : 50, turns), [0, 0])),
  ]);

  it("throws it", () => {
    const slopes = biteProfile(outer, "ccw").pieces.flatMap(({ curve, from, to }) => [
      steepnessAt(curve, from),
      steepnessAt(curve, to),
    ]);
    const joint = slopes.filter((slope) => slope > 5 && slope < 500).sort((a, b) => a - b);
    expect(joint.length).toBeGreaterThan(3);
    expectSound(outer, [...joint, ...joint.slice(1).map((slope, i) => (slope + (joint[i] ?? slope)) / 2)]);
  });
});

describe("light from straight above", () => {
  const bothFast = (outer: Loop) => {
    const profile = biteProfile(outer, "ccw");
    return [1e9, 1e19].map((advance) =>
      biteAt(profile, { ...SPIN, closingMPerS: (advance * SPIN.radPerS) / 1000 }),
    );
  };

  // A lip that rises forwards to an edge on the x axis, falls back radially, and runs back under itself,
  // rising again.
  it("stays out from under a lip with a radial edge", () => {
    const polar = (radius: number, angle: number) => behind(radius, -angle / (2 * Math.PI));
    const lipped = polygon(
      offered([
        polar(80, 0.3),
        [95, 0],
        [60, 0],
        polar(70, 0.2),
        polar(50, 0.25),
        polar(50, -0.2),
        polar(99, -2),
        polar(50, -2.1),
        polar(50, -4),
      ]),
    );
    const [fast, endless] = bothFast(lipped);
    expect(endless?.maxMm).toBeCloseTo(fast?.maxMm ?? 0, 6);
    expect(endless?.strikes.map(({ place }) => place)).toEqual(fast?.strikes.map(({ place }) => place));
  });

  // So fast a target falls along radial lines: the faces on the axes of the drawing stand exactly along its
  // rays.
  it("passes over radial faces", () => {
    const cross = polygon([
      [100, 0],
      [70, 30],
      [0, 40],
      [0, 90],
      [-50, 50],
      [-40, 0],
      [-95, 0],
      [-50, -60],
      [0, -50],
      [0, -30],
      [40, -30],
      [40, 0],
    ]);
    const [fast, endless] = bothFast(cross);
    expect(endless?.maxMm).toBeCloseTo(fast?.maxMm ?? 0, 6);
    expect(endless?.meanMm).toBeCloseTo(fast?.meanMm ?? 0, 5);
    expect(fast?.strikes.length).toBeGreaterThan(4);
  });

  it("and from nearly level meets the tips of a rectangle alone", () => {
    const bite = biteAt(biteProfile(rectangle(-130, -24, 130, 24), "ccw"), { ...SPIN, closingMPerS: 1e-6 });
    expect(bite.maxMm).toBeLessThan(1e-4);
  });
});
