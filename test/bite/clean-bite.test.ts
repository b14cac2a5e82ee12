import { describe, expect, it } from "vitest";
import { biteProfile, cleanBite } from "../../geometry/bite/bite.ts";
import { biteAtAdvance } from "../../geometry/bite/bite-at.ts";

import type { Loop } from "../../geometry/outline/segment.ts";
import { expectClose } from "../support/close-to.ts";
import { arc, bulgeLoop, chain, circle, line, type Pair, polygon, rectangle } from "../support/loops.ts";
import { randomBar } from "./random-bars.ts";
import { behind, cleanOf, offered, RAD_PER_S, SQUARE_RAD, speedOf } from "./spin.ts";

const TIP = 100;

/** One radial tooth, with more points between its steep back and its root. */
const oneTooth = (...between: Pair[]): Loop =>
  polygon(offered([behind(40, 0), behind(TIP, 0), behind(30, 0.01), ...between, behind(30, 0.9)]));

describe("the clean bite worked out by hand", () => {
  // A tail of radius R2 half a turn behind the tooth comes out of its shadow where the advance of half a turn
  // is R − R2.
  it("ends at 2f(R − R2) with a tail opposite", () => {
    for (const tail of [75, 90, 99]) {
      const clean = cleanOf(
        oneTooth(behind(30, 0.25), behind(tail, 0.5), behind(30, 0.51), behind(30, 0.75)),
      );
      expectClose(clean.closingMPerS ?? 0, speedOf(2 * (TIP - tail)), 1e-10);
      expectClose(clean.endedBy?.point?.x, -tail, 1e-9);
      expect(clean.endedBy?.strikeAngleRad).toBeGreaterThanOrEqual(0);
    }
  });

  // A spiral back of rise s a turn, drawn as a fan of chords with corners on the spiral. Seen from the tip
  // every corner lies at the slope s a turn exactly, and the chords in between lie lower: the first advance
  // to uncover any of it is s.
  it("ends at s·f with a spiral back of rise s a turn", () => {
    for (const [rise, chords] of [
      [10, 36],
      [25, 90],
      [3, 400],
    ] as const) {
      const fan = Array.from({ length: chords + 1 }, (_, i) => behind(TIP - (rise * i) / chords, i / chords));
      expectClose(cleanOf(polygon(offered(fan))).closingMPerS ?? 0, speedOf(rise), 1e-10);
    }
  });

  // The face is square down to its foot; the gullet is not. Seen from the tip before, the foot lies at (R −
  // r)/gap.
  it("ends where the target reaches the foot of the next face", () => {
    const gap = 1 / 3;
    const teeth = [0, 1, 2].flatMap((i): Pair[] => [
      behind(60, i * gap),
      behind(TIP, i * gap),
      behind(50, i * gap + 0.01),
      behind(50, i * gap + gap / 2),
    ]);
    const clean = cleanOf(polygon(offered(teeth)));
    expectClose(clean.closingMPerS ?? 0, speedOf(40 / gap), 1e-10);
    expectClose(Math.hypot(clean.endedBy?.point?.x ?? 0, clean.endedBy?.point?.y ?? 0), 60, 1e-9);
  });

  // A straight face at the distance d from the axis is square out from where d/tan(35°) is the way from its
  // foot.
  it("ends on a face where it turns too flat to be square", () => {
    const d = 55;
    const foot = Math.sqrt(TIP * TIP - d * d);
    // The face runs along y = −d out to x = foot; the tooth is seen from itself a turn before.
    const tip: Pair = [foot, -d];
    const phi = Math.atan2(tip[1], tip[0]);
    const back = (radius: number, turns: number): Pair => [
      radius * Math.cos(phi - 2 * Math.PI * turns),
      radius * Math.sin(phi - 2 * Math.PI * turns),
    ];
    const bar = polygon(
      offered([[5, -d], tip, back(50, 0.01), back(50, 0.25), back(50, 0.5), back(50, 0.75)]),
    );
    const clean = cleanOf(bar, "ccw");
    const along = d / Math.tan(SQUARE_RAD);
    const radius = Math.hypot(along, d);
    // The face leans over: the place is offered this much after the tip.
    const after = Math.atan2(d, along) - Math.atan2(d, foot);
    expectClose(
      clean.closingMPerS ?? 0,
      (((TIP - radius) / (2 * Math.PI + after)) * RAD_PER_S) / 1000,
      1e-10,
    );
    expectClose(clean.endedBy?.strikeAngleRad, SQUARE_RAD, 1e-9);
    expectClose(clean.endedBy?.point?.x, along, 1e-9);
  });

  // A straight back falls fast at first and ever less: it comes out of its own tip's shadow at its far end.
  it("ends at the far end of a straight back", () => {
    const clean = cleanOf(
      polygon(
        offered([
          behind(40, 0),
          behind(TIP, 0),
          behind(99, 0.05),
          behind(40, 0.06),
          behind(40, 0.35),
          behind(40, 0.7),
        ]),
      ),
    );
    expectClose(clean.closingMPerS ?? 0, speedOf(1 / 0.05), 1e-10);
  });

  // A round back of a smaller radius than the tip's falls ever faster: it is struck right behind the tip once
  // the target comes in more steeply than the arc leaves it. With the centre at (30, 4) from a tip on the x
  // axis that is R·4/70 a radian.
  it("ends at the slope with which a round back leaves the tip", () => {
    const centre: Pair = [30, 4];
    const start = Math.atan2(-4, 70);
    const back = arc(centre, Math.hypot(70, 4), start - 1, 1);
    const bar = chain([
      back,
      line([TIP, 0], [40, 0]),
      ...[behind(40, 0), behind(40, 0.75), behind(40, 0.5), behind(40, 0.25)].map((from) => line(from, from)),
    ]);
    const clean = cleanOf(bar);
    expectClose(clean.closingMPerS ?? 0, (((TIP * 4) / 70) * RAD_PER_S) / 1000, 1e-10);
    expect(clean.endedBy?.place?.index).toBe(0);
    expectClose(clean.endedBy?.strikeAngleRad, Math.PI / 2 - start, 1e-9);
  });

  it.each<[string, Loop]>([
    ["a rectangle, whose trailing corners always strike", rectangle(-130, -24, 130, 24)],
    ["a disc", circle(TIP)],
    ["a disc off its centre", circle(TIP, [20, 0])],
  ])("is 0 for %s", (_, bar) => {
    for (const direction of ["ccw", "cw"] as const) {
      const clean = cleanOf(bar, direction);
      expect(clean.closingMPerS).toBe(0);
      expect(clean.endedBy).not.toBeNull();
    }
  });

  it("is 0 for a rounded tip and for a land on the tip", () => {
    const land = chain([
      arc([0, 0], TIP, -0.1, 0.1),
      line([TIP, 0], [40, 0]),
      arc([0, 0], 40, 0, 2 * Math.PI - 0.2),
      line([40 * Math.cos(0.2), -40 * Math.sin(0.2)], [TIP, 0]),
    ]);
    expect(cleanOf(land, "ccw").closingMPerS).toBe(0);
    const round = bulgeLoop([
      [-40, -30, 0],
      [90, -5, 1],
      [90, 5, 0],
      [-40, 30, 0],
    ]);
    expect(cleanOf(round).closingMPerS).toBe(0);
  });

  // Twenty-four saw teeth whose faces lead all the way from an undercut back to the next tip: nothing else
  // can ever be met.
  it("is null where nothing but faces can be met", () => {
    const teeth = 24;
    const saw = Array.from({ length: teeth }, (_, i) => i / teeth).flatMap((at): Pair[] => [
      behind(TIP, at),
      behind(50, at - 0.004),
    ]);
    const clean = cleanOf(polygon(offered(saw)));
    expect(clean).toEqual({ closingMPerS: null, endedBy: null });
  });
});

/**
 * A face with a nose: from its foot forwards up to A, back up over a shallow patch and a steep wall to the
 * nose, forwards again to the tip. The patch is too flat to be square. Targets whose paths are shallower than
 * the patch see it from below the nose; for steeper ones the nose hides it, and they meet the square face
 * below A.
 */
const nosed = chain([
  arc([0, 0], 20, -5.9, 5.88),
  line(behind(20, 0.02 / (2 * Math.PI)), behind(TIP, 0)),
  line(behind(TIP, 0), polarBehind(85, 6)),
  line(polarBehind(85, 6), polarBehind(70.12, 6.18)),
  line(polarBehind(70.12, 6.18), polarBehind(70, 6.2)),
  line(polarBehind(70, 6.2), polarBehind(20, 5.9)),
]);

function polarBehind(radius: number, theta: number): Pair {
  return behind(radius, theta / (2 * Math.PI));
}

describe("the lowest of several", () => {
  const square = 1.2;
  const spin = { radPerS: 1000, squareStrikeRad: square };
  const profile = biteProfile(nosed, "ccw");
  const uncleanAt = (advance: number) =>
    1 - biteAtAdvance(profile, profile.teeth(square), advance).cleanShare;

  it("is found where faster targets strike cleanly again", () => {
    const clean = cleanBite(profile, spin);
    expectClose(clean.closingMPerS ?? 0, (TIP - 70.12) / 6.18, 1e-10);
    expect(clean.endedBy?.place?.index).toBe(4);
    expect(uncleanAt(4.8)).toBeLessThan(1e-12);
    expect(uncleanAt(5.2)).toBeGreaterThan(1e-4);
    expect(uncleanAt(8)).toBeLessThan(1e-12);
    expect(uncleanAt(14)).toBeGreaterThan(1e-3);
  });
});

describe("the clean bite of random bars", () => {
  const advances = (top: number) =>
    [...Array(25).keys()].flatMap((i) => [(top * (i + 1)) / 26, top * 1e-3 ** ((i + 1) / 26)]);

  it.each([...Array(40).keys()])("bar %i: all clean below, something unclean just above", (seed) => {
    for (const direction of ["ccw", "cw"] as const) {
      for (const squareStrikeRad of [SQUARE_RAD, 1.2]) {
        const profile = biteProfile(randomBar(seed), direction);
        const teeth = profile.teeth(squareStrikeRad);
        const uncleanAt = (advance: number) => 1 - biteAtAdvance(profile, teeth, advance).cleanShare;
        const { closingMPerS, endedBy } = cleanBite(profile, { radPerS: 1000, squareStrikeRad });
        if (closingMPerS === 0) {
          for (const advance of [1e-3, 0.1, 10]) expect(uncleanAt(advance)).toBeGreaterThan(1e-12);
          continue;
        }
        const limit = closingMPerS ?? 1000 * profile.maxRadiusMm;
        for (const advance of advances(limit)) expect(uncleanAt(advance)).toBeLessThan(1e-9);
        if (closingMPerS === null) continue;
        expect(uncleanAt(limit * (1 + 1e-6))).toBeGreaterThan(1e-14);
        expect(endedBy).not.toBeNull();
      }
    }
  });
});
