/** The steppers themselves, against contacts that can be worked out by hand, and against one another. */
import { describe, expect, it } from "vitest";
import type { Loop } from "../../geometry/outline/segment.ts";
import { mirroredLoop, reversedLoop } from "../../geometry/outline/transform.ts";
import { expectClose } from "../support/close-to.ts";
import { bulgeLoop, circle, rectangle } from "../support/loops.ts";
import { needles, rootOf, TIP } from "./by-hand.ts";
import { type Contact, evenPhases, type Hit, type SteppedTarget, stepper } from "./oracles/first-contact.ts";
import { type Survey, survey } from "./oracles/survey.ts";
import { randomBar } from "./random-bars.ts";

const TURN = 2 * Math.PI;
const EVERYTHING = { segments: 0, squareStrikeRad: Math.PI };
const EFFORT = { phases: 120, halvings: 22, smoothMm: 1e-3 };
/** What a survey of that effort is good to, as a share of the radius. */
const SURVEYED = 1e-5;
/** What a single contact is good to. */
const STEPPED = 1e-7;

function surveyed(outer: Loop, target: SteppedTarget, advanceMm: number): Survey {
  const step = stepper(outer, "ccw", target, advanceMm);
  return survey(step, { ...EVERYTHING, segments: outer.segments.length }, EFFORT);
}

describe("thin teeth", () => {
  // An edge that just clears a tip meets the next face a k-th of a turn later.
  it.each([1, 2, 3, 4])("%i of them bite an edge by a k-th of a turn's advance", (count) => {
    for (const advance of [0.3, 4, 9]) {
      const { maxMm, meanMm, passedShare, quantileMm } = surveyed(needles(count), { kind: "edge" }, advance);
      const most = (TURN * advance) / count;
      expectClose(maxMm, most, SURVEYED, TIP);
      expectClose(meanMm, most / 2, SURVEYED, TIP);
      expectClose(quantileMm(0.1), most * 0.1, SURVEYED, TIP);
      expectClose(quantileMm(0.9), most * 0.9, SURVEYED, TIP);
      expect(passedShare).toBe(0);
    }
  });

  // Off by h the edge clears the tip at the angle asin(h/R) and meets the next face at atan(h/X).
  it.each([-30, 12, 45])("%i mm off its way turn into the edge sooner or later", (offset) => {
    const [count, advance] = [3, 9];
    const entry = Math.sqrt(TIP ** 2 - offset ** 2);
    const late = (depth: number) =>
      depth / advance - (TURN / count + Math.atan2(offset, entry - depth) - Math.asin(offset / TIP));
    const { maxMm } = surveyed(needles(count), { kind: "edge", offsetMm: offset }, advance);
    expectClose(maxMm, rootOf(late, 0, entry), SURVEYED, TIP);
  });

  /*
   * A disc whose centre is X before the axis clears a tip at the angle β behind it: the gap is least where its
   * rate −κ(X − R cos β) + R·X sin β is 0. The next face, γ ahead of it, is met where X sin γ = c.
   */
  it("let a disc in until it lies on the next face", () => {
    const [count, advance, radius] = [3, 12, 8];
    const tipGap = (x: number, beta: number) =>
      Math.hypot(TIP * Math.cos(beta) - x, TIP * Math.sin(beta)) - radius;
    const xAt = (beta: number) => (advance * TIP * Math.cos(beta)) / (advance - TIP * Math.sin(beta));
    // On the way out of the tip's circle the centre is farther in than the tip stands out.
    const beta = rootOf((b) => tipGap(xAt(b), b), 1e-9, Math.asin(advance / TIP) - 1e-9);
    const centre = xAt(beta);
    const gamma = (turned: number) => TURN / count - beta - turned;
    const turned = rootOf(
      (t) => radius - (centre - advance * t) * Math.sin(gamma(t)),
      0,
      TURN / count - beta,
    );
    const { maxMm } = surveyed(needles(count), { kind: "round", radiusMm: radius }, advance);
    expectClose(maxMm, TIP + radius - (centre - advance * turned), SURVEYED, TIP);
  });

  /*
   * A face meets tips alone. A tip at the angle δ from the way stands out R cos δ; the face is there after
   * t = R(1 − cos δ)/κ, so a phase strikes at δ if φ = δ − t, dφ = (1 − R/κ·sin δ) dδ. The face clears a tip
   * where that is 0, sin δ = κ/R, and meets the next one at −ψ; between, the depth is R(1 − cos δ).
   */
  it.each([2, 3, 4])("%i of them bite a face with their tips", (count) => {
    const advance = 25;
    const clears = Math.asin(advance / TIP);
    const phaseOf = (delta: number) => delta - (TIP / advance) * (1 - Math.cos(delta));
    const psi = rootOf((p) => phaseOf(clears) - phaseOf(-p) - TURN / count, 0, Math.PI / count);
    const swept = (delta: number) =>
      TIP * (delta - Math.sin(delta)) - ((TIP ** 2 / advance) * (1 - Math.cos(delta)) ** 2) / 2;
    const { maxMm, meanMm } = surveyed(needles(count), { kind: "face" }, advance);
    expectClose(maxMm, TIP * (1 - Math.cos(psi)), SURVEYED, TIP);
    expectClose(meanMm, ((swept(clears) - swept(-psi)) * count) / TURN, SURVEYED, TIP);
  });
});

describe("a square against a fast face", () => {
  // So fast a face finds the square as it stands: the depth is R minus the support function, R(1 − cos δ) with
  // δ up to an eighth of a turn from the nearest corner.
  it("bites by its support function", () => {
    const half = TIP / Math.SQRT2;
    const { maxMm, meanMm, quantileMm } = surveyed(
      rectangle(-half, -half, half, half),
      { kind: "face" },
      1e9,
    );
    expectClose(maxMm, TIP - half, SURVEYED, TIP);
    expectClose(meanMm, TIP * (1 - Math.sin(Math.PI / 4) / (Math.PI / 4)), SURVEYED, TIP);
    expectClose(quantileMm(0.5), TIP * (1 - Math.cos(Math.PI / 8)), SURVEYED, TIP);
  });
});

describe("a rectangle and a fast edge off its way", () => {
  /*
   * As it stands at the angle α, the edge at the height h meets it from where the leading corner comes up to
   * h, α = asin(h/R) − atan(w/l), to where the long side leaves the place abreast of the axis, cos α = −w/h.
   */
  it("pass each other by", () => {
    const [long, wide, offset] = [TIP, 12, 40];
    const bar = rectangle(-long, -wide, long, wide);
    const from = Math.asin(offset / Math.hypot(long, wide)) - Math.atan(wide / long);
    const to = Math.PI / 2 + Math.asin(wide / offset);
    const { passedShare, maxMm } = surveyed(bar, { kind: "edge", offsetMm: offset }, 1e9);
    expectClose(passedShare, 1 - (to - from) / Math.PI, SURVEYED, 1);
    expectClose(maxMm, Math.sqrt(long ** 2 + wide ** 2 - offset ** 2), SURVEYED, TIP);
  });
});

describe("a disc", () => {
  const targets: readonly SteppedTarget[] = [
    { kind: "edge" },
    { kind: "edge", offsetMm: 60 },
    { kind: "edge", offsetMm: -99 },
    { kind: "round", radiusMm: 15 },
    { kind: "round", radiusMm: 15, offsetMm: -40 },
    { kind: "face" },
  ];
  it.each(targets)("bites nothing of %o", (target) => {
    for (const advance of [0.2, 8, 700]) {
      for (const { depthMm, hit } of evenPhases(stepper(circle(TIP), "ccw", target, advance), 40)) {
        expectClose(depthMm, 0, 1e-9, TIP);
        // It is struck flat on its side, by a rim that moves across.
        expect(hit?.segment).toBe(0);
      }
    }
  });

  it("strikes along its rim: at a right angle to the normal", () => {
    for (const { hit } of evenPhases(stepper(circle(TIP), "ccw", { kind: "edge" }, 5), 10))
      expectClose(hit?.strikeAngleRad, Math.PI / 2, STEPPED);
  });
});

describe("targets that are the same thing", () => {
  const [half, wide, radius] = [100, 30, 11];
  const bar = rectangle(-half, -wide, half, wide);
  const quarter = Math.tan(Math.PI / 8);
  // The rectangle grown by the disc's radius.
  const grown = bulgeLoop([
    [-half, -wide - radius, 0],
    [half, -wide - radius, quarter],
    [half + radius, -wide, 0],
    [half + radius, wide, quarter],
    [half, wide + radius, 0],
    [-half, wide + radius, quarter],
    [-half - radius, wide, 0],
    [-half - radius, -wide, quarter],
  ]);

  it.each([0, -35, 80])("a disc, %i mm off, and a point against the bar grown by it", (offsetMm) => {
    for (const advance of [0.7, 20, 400]) {
      const discs = evenPhases(
        stepper(bar, "ccw", { kind: "round", radiusMm: radius, offsetMm }, advance),
        60,
      );
      const points = evenPhases(stepper(grown, "ccw", { kind: "edge", offsetMm }, advance), 60);
      // The grown outline reaches no farther than a disc at the corner: √(l² + w²) + c in both.
      expectSame(discs, points, STEPPED * half);
      // The normal is the same, but the bar moves at the foot of it and not at the disc's centre: of the speed
      // there, ω·r, the normal has ω·r·cos, which is the same all along it.
      discs.forEach(({ hit }, i) => {
        expect(alongNormal(hit)).toBeCloseTo(alongNormal(points[i]?.hit ?? null), 4);
      });
    }
  });

  // A disc of radius c bulges by y²/2c over a face: 5e-7 of R where c is a million times it.
  it.each([...Array(12).keys()])("a face and an enormous disc, on bar %i", (seed) => {
    const outer = randomBar(seed);
    const faces = evenPhases(stepper(outer, "ccw", { kind: "face" }, 7), 40);
    const discs = evenPhases(stepper(outer, "ccw", { kind: "round", radiusMm: 1e8 }, 7), 40);
    expectSame(faces, discs, 1e-4);
  });

  it.each([...Array(12).keys()])("bar %i and its mirror image that turns the other way", (seed) => {
    const outer = randomBar(seed);
    const mirrored = reversedLoop(mirroredLoop(outer, "x"));
    const last = outer.segments.length - 1;
    for (const target of [
      { kind: "edge", offsetMm: 20 },
      { kind: "round", radiusMm: 6, offsetMm: -15 },
      { kind: "face" },
    ] as const) {
      const own = evenPhases(stepper(outer, "ccw", target, 7), 40);
      const other = evenPhases(stepper(mirrored, "cw", target, 7), 40);
      expectSame(own, other, STEPPED * TIP);
      own.forEach(({ hit }, i) => {
        const image = other[i]?.hit;
        expect(image === null).toBe(hit === null);
        if (hit === null || !image) return;
        expectClose(image.strikeAngleRad, hit.strikeAngleRad, 1e-4, 1);
        expectClose(image.point.y, -hit.point.y, 1e-4, TIP);
        if (Math.abs(hit.fraction - 0.5) < 0.49) expect(image.segment).toBe(last - hit.segment);
      });
    }
  });
});

/** The speed along the normal at a spin of 1 rad/s. */
function alongNormal(hit: Hit | null): number {
  return hit === null ? 0 : Math.hypot(hit.point.x, hit.point.y) * Math.cos(hit.strikeAngleRad);
}

function expectSame(a: readonly Contact[], b: readonly Contact[], withinMm: number): void {
  expect(a.map(({ passed }) => passed)).toEqual(b.map(({ passed }) => passed));
  a.forEach(({ depthMm }, i) => {
    expectClose(depthMm, b[i]?.depthMm ?? Number.NaN, withinMm, 1);
  });
}
