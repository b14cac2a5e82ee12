/** One approach as it is drawn: the bar turned and the target moved touch where the contact says, and not before. */
import { polygonContains } from "d3-polygon";
import { describe, expect, it } from "vitest";
import { approachOf, sceneAt, slowdown, turnedPoint } from "../../extension/preview/page/approach/scene.ts";
import { biteProfile } from "../../geometry/bite/bite.ts";
import type { Target } from "../../geometry/language/design.ts";
import { flatten } from "../../geometry/outline/flatten.ts";
import { randomBar } from "../bite/random-bars.ts";
import { expectClose } from "../support/close-to.ts";

const TARGETS: readonly Target[] = [
  { kind: "edge", radiusMm: 0, offsetMm: 0 },
  { kind: "edge", radiusMm: 0, offsetMm: 11 },
  { kind: "edge", radiusMm: 0, offsetMm: -11 },
  { kind: "face", radiusMm: 0, offsetMm: 0 },
  { kind: "round", radiusMm: 6, offsetMm: 0 },
  { kind: "round", radiusMm: 6, offsetMm: 15 },
];
const CASES = TARGETS.flatMap((target, i) =>
  (["ccw", "cw"] as const).map((direction, j) => ({ target, direction, seed: 3 * i + j })),
);
const SPEEDS = { closingMPerS: 3, radPerS: 400 };
const PHASES = [0, 1, 2.5, 4, 6];

describe("the picture of an approach", () => {
  it.each(CASES)("touches at contact: $target.kind, offset $target.offsetMm, $direction", (one) => {
    const profile = biteProfile(randomBar(one.seed), one.direction, one.target);
    for (const phase of PHASES) {
      const approach = approachOf(profile, SPEEDS, phase);
      const { contact } = approach;
      if (contact.point === null) continue;
      const { barTurnRad, targetAt } = sceneAt(approach, 0);
      const struck = turnedPoint(contact.point, barTurnRad);
      if (one.target.kind === "face") expectClose(struck.x, targetAt.x, 1e-9);
      else
        expectClose(
          Math.hypot(struck.x - targetAt.x, struck.y - targetAt.y) + 1,
          one.target.radiusMm + 1,
          1e-7,
        );
    }
  });

  it.each(CASES)("touches nothing before: $target.kind, offset $target.offsetMm, $direction", (one) => {
    const outer = randomBar(one.seed);
    const corners = flatten(outer, 0.01);
    const profile = biteProfile(outer, one.direction, one.target);
    for (const phase of PHASES) {
      const approach = approachOf(profile, SPEEDS, phase);
      for (let step = 1; step <= 60; step++) {
        const { barTurnRad, targetAt } = sceneAt(approach, (approach.leadRad * step) / 60);
        const turned = corners.map((corner) => turnedPoint(corner, barTurnRad));
        // The deepest a corner of the flattened bar reaches into the target; flat chords forgive a hundredth.
        const reach = turned.map(({ x, y }) => {
          if (one.target.kind === "face") return x - targetAt.x;
          return one.target.radiusMm - Math.hypot(x - targetAt.x, y - targetAt.y);
        });
        expect(Math.max(...reach)).toBeLessThan(0.02);
        const bar = turned.map(({ x, y }): [number, number] => [x, y]);
        if (one.target.kind !== "face") expect(polygonContains(bar, [targetAt.x, targetAt.y])).toBe(false);
      }
    }
  });

  it("enters at the phase that was asked for, and the target comes from the right", () => {
    const profile = biteProfile(randomBar(1), "ccw", TARGETS[1]);
    for (const phase of PHASES) {
      const approach = approachOf(profile, SPEEDS, phase);
      const { depthMm } = approach.contact;
      const entry = sceneAt(approach, depthMm / approach.advanceMm);
      expectClose(Math.cos(entry.barTurnRad - phase), 1, 1e-9);
      expectClose(entry.targetAt.x, profile.rimMm, 1e-9);
      expect(sceneAt(approach, approach.leadRad).targetAt.x).toBeGreaterThan(profile.rimMm);
    }
  });

  it("mirrors a bar that turns the other way", () => {
    const profile = biteProfile(randomBar(2), "cw", TARGETS[1]);
    const { barTurnRad, targetAt } = sceneAt(approachOf(profile, SPEEDS, 1), 0.5);
    const earlier = sceneAt(approachOf(profile, SPEEDS, 1), 1);
    expect(targetAt.y).toBe(-11);
    // Clockwise: as time goes on the angle falls.
    expect(barTurnRad).toBeLessThan(earlier.barTurnRad);
  });

  it("is slowed down by a round number, about a turn in three seconds", () => {
    expect(slowdown((4200 / 60) * 2 * Math.PI)).toBe(200);
    expect(slowdown((900 / 60) * 2 * Math.PI)).toBe(20);
    expect(slowdown((7600 / 60) * 2 * Math.PI)).toBe(200);
    expect(slowdown(0.1)).toBe(1);
  });
});
