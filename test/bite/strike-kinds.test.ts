import { describe, expect, it } from "vitest";
import { biteAt, biteProfile, STRIKE_KINDS, strikesByKind } from "../../geometry/bite/bite.ts";
import type { Target } from "../../geometry/language/design.ts";
import { expectClose } from "../support/close-to.ts";
import { polygon } from "../support/loops.ts";
import { variedBar } from "./random-bars.ts";
import { behind, offered, RAD_PER_S, SPIN, SQUARE_RAD } from "./spin.ts";

const TARGETS: readonly Target[] = [
  { kind: "edge", radiusMm: 0, offsetMm: 0 },
  { kind: "edge", radiusMm: 0, offsetMm: 14 },
  { kind: "face", radiusMm: 0, offsetMm: 0 },
  { kind: "round", radiusMm: 5, offsetMm: -8 },
];

describe("strikes told apart by how they land", () => {
  it.each([...Array(40).keys()])("add up to the shares of the whole, bar %i", (seed) => {
    const outer = variedBar(seed);
    const target = TARGETS[seed % TARGETS.length];
    const profile = biteProfile(outer, seed % 2 === 0 ? "ccw" : "cw", target);
    for (const advance of [0.5, 8, 60]) {
      const condition = { ...SPIN, closingMPerS: (advance * RAD_PER_S) / 1000 };
      const [bite, strikes] = [biteAt(profile, condition), strikesByKind(profile, condition)];
      const shares = STRIKE_KINDS.map((kind) =>
        strikes.filter((strike) => strike.kind === kind).reduce((sum, { share }) => sum + share, 0),
      );
      const [square = 0, skidding = 0, off = 0] = shares;
      expectClose(square, bite.cleanShare, 1e-9);
      expectClose(square + skidding, bite.toothShare, 1e-9);
      expectClose(square + skidding + off + bite.passedShare, 1, 1e-9);
      for (const { kind, strikeAngleRad } of strikes)
        if (kind === "square") expect(strikeAngleRad.most).toBeLessThanOrEqual(SQUARE_RAD + 1e-9);
      // Each place as a whole is what it is without telling apart.
      for (const whole of bite.strikes) {
        const own = strikes.filter(
          ({ place }) => place.kind === whole.place.kind && place.index === whole.place.index,
        );
        expectClose(
          own.reduce((sum, { share }) => sum + share, 0),
          whole.share,
          1e-9,
        );
        expectClose(Math.max(...own.map(({ depthMm }) => depthMm.most)), whole.depthMm.most, 1e-9);
        expectClose(Math.min(...own.map(({ radiusMm }) => radiusMm.least)), whole.radiusMm.least, 1e-9);
      }
    }
  });

  // A straight face at the distance d from the axis meets its target at the angle whose sine is d/r.
  it("part where a straight face ceases to be square, at d/sin(35°)", () => {
    const [tip, d] = [100, 30];
    const face = (radius: number) => behind(radius, Math.asin(d / radius) / (2 * Math.PI));
    const bar = polygon(offered([behind(34, 0.5), behind(34, 0.75), face(35), face(tip), behind(34, 0.3)]));
    const strikes = strikesByKind(biteProfile(bar, "ccw"), { ...SPIN, closingMPerS: 7 });
    const onFace = strikes.filter(({ radiusMm }) => radiusMm.most > 36 && radiusMm.least < 99);
    const [square, skidding] = STRIKE_KINDS.map((kind) => onFace.find((strike) => strike.kind === kind));
    expect(square?.place).toEqual(skidding?.place);
    expectClose(square?.radiusMm.least ?? 0, d / Math.sin(SQUARE_RAD), 1e-9);
    expectClose(skidding?.radiusMm.most ?? 0, d / Math.sin(SQUARE_RAD), 1e-9);
  });
});
