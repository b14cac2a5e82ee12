/** The exact bite against contacts that can be worked out by hand: faces, rounded edges and lines aside of the axis. */
import { describe, expect, it } from "vitest";
import { biteAt, biteProfile, teethOnly } from "../../geometry/bite/bite.ts";
import type { Target } from "../../geometry/language/design.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { expectClose } from "../support/close-to.ts";
import { bulgeLoop, circle, type Pair, polygon, rectangle } from "../support/loops.ts";
import { needles, ROOT, rootOf, TIP } from "./by-hand.ts";
import { behind, offered, RAD_PER_S, SPIN } from "./spin.ts";

const TURN = 2 * Math.PI;
const EXACT = 1e-9;
const EDGE: Target = { kind: "edge", radiusMm: 0, offsetMm: 0 };
const FACE: Target = { kind: "face", radiusMm: 0, offsetMm: 0 };

const speedOf = (advanceMm: number) => (advanceMm * RAD_PER_S) / 1000;

function bite(outer: Loop, target: Target, advanceMm: number) {
  return biteAt(biteProfile(outer, "ccw", target), { ...SPIN, closingMPerS: speedOf(advanceMm) });
}

describe("thin teeth", () => {
  it.each([1, 2, 3, 4])("%i of them bite an edge evenly up to a share of the advance of a turn", (count) => {
    for (const advance of [0.3, 4, 9]) {
      const most = (TURN * advance) / count;
      const { minMm, tenthMm, medianMm, meanMm, ninetiethMm, maxMm } = bite(needles(count), EDGE, advance);
      expect(minMm).toBe(0);
      expectClose(tenthMm, most * 0.1, EXACT, TIP);
      expectClose(medianMm, most / 2, EXACT, TIP);
      expectClose(meanMm, most / 2, EXACT, TIP);
      expectClose(ninetiethMm, most * 0.9, EXACT, TIP);
      expectClose(maxMm, most, EXACT, TIP);
    }
  });

  // Off by h the edge clears the tip at the angle asin(h/R) and meets the next face at atan(h/X).
  it.each([-39, -30, 12, 39])("%i mm off its way turn into the edge sooner or later", (offsetMm) => {
    const [count, advance] = [3, 9];
    const entry = Math.sqrt(TIP ** 2 - offsetMm ** 2);
    const late = (depth: number) =>
      depth / advance - (TURN / count + Math.atan2(offsetMm, entry - depth) - Math.asin(offsetMm / TIP));
    const { maxMm } = bite(needles(count), { ...EDGE, offsetMm }, advance);
    expectClose(maxMm, rootOf(late, 0, entry), EXACT, TIP);
  });

  // A disc clears the tip where it is nearest to it and lies against the next face where X·sin γ is its radius.
  it("let a disc in until it lies on the next face", () => {
    const [count, advance, radiusMm] = [3, 12, 8];
    const gap = (x: number, beta: number) =>
      Math.hypot(TIP * Math.cos(beta) - x, TIP * Math.sin(beta)) - radiusMm;
    const xAt = (beta: number) => (advance * TIP * Math.cos(beta)) / (advance - TIP * Math.sin(beta));
    const beta = rootOf((b) => gap(xAt(b), b), 1e-9, Math.asin(advance / TIP) - 1e-9);
    const centre = xAt(beta);
    const gamma = (turned: number) => TURN / count - beta - turned;
    const lies = (t: number) => radiusMm - (centre - advance * t) * Math.sin(gamma(t));
    const turned = rootOf(lies, 0, TURN / count - beta);
    const { maxMm } = bite(needles(count), { kind: "round", radiusMm, offsetMm: 0 }, advance);
    expectClose(maxMm, TIP + radiusMm - (centre - advance * turned), EXACT, TIP);
  });

  /*
   * A tip at the angle δ from the way stands out R cos δ; the face is there after t = R(1 − cos δ)/κ, so a phase
   * strikes at δ if φ = δ − t. The face clears a tip where dφ/dδ is 0, sin δ = κ/R, and meets the next one at −ψ.
   */
  it.each([2, 3, 4])("%i of them bite a face with their tips", (count) => {
    const advance = 25;
    const clears = Math.asin(advance / TIP);
    const phaseOf = (delta: number) => delta - (TIP / advance) * (1 - Math.cos(delta));
    const psi = rootOf((p) => phaseOf(clears) - phaseOf(-p) - TURN / count, 0, Math.PI / count);
    const swept = (delta: number) =>
      TIP * (delta - Math.sin(delta)) - ((TIP ** 2 / advance) * (1 - Math.cos(delta)) ** 2) / 2;
    const { maxMm, meanMm, toothShare, strikes } = bite(needles(count), FACE, advance);
    expectClose(maxMm, TIP * (1 - Math.cos(psi)), EXACT, TIP);
    expectClose(meanMm, ((swept(clears) - swept(-psi)) * count) / TURN, EXACT, TIP);
    expectClose(toothShare, 1, EXACT);
    expect(strikes.map(({ place }) => place.kind)).toEqual(Array(count).fill("corner"));
  });
});

describe("polygons and fast targets", () => {
  // A fast face finds the square as it stands: R minus the support function, R(1 − cos δ), δ up to 45°.
  it("bite a face by the support function", () => {
    const half = TIP / Math.SQRT2;
    const { maxMm, meanMm, medianMm } = bite(rectangle(-half, -half, half, half), FACE, 1e9);
    expectClose(maxMm, TIP - half, EXACT, TIP);
    expectClose(meanMm, TIP * (1 - Math.sin(Math.PI / 4) / (Math.PI / 4)), EXACT, TIP);
    expectClose(medianMm, TIP * (1 - Math.cos(Math.PI / 8)), EXACT, TIP);
  });

  // The edge at the height h meets the bar from where the leading corner comes up to h until the long side leaves
  // the place abreast of the axis.
  it("let an edge off its way pass a rectangle", () => {
    const [long, wide, offsetMm] = [TIP, 12, 40];
    const from = Math.asin(offsetMm / Math.hypot(long, wide)) - Math.atan(wide / long);
    const to = Math.PI / 2 + Math.asin(wide / offsetMm);
    const { passedShare, maxMm, strikes } = bite(
      rectangle(-long, -wide, long, wide),
      { ...EDGE, offsetMm },
      1e11,
    );
    expectClose(passedShare, 1 - (to - from) / Math.PI, EXACT, 1);
    expectClose(maxMm, Math.sqrt(long ** 2 + wide ** 2 - offsetMm ** 2), EXACT, TIP);
    expectClose(
      strikes.reduce((sum, { share }) => sum + share, passedShare),
      1,
      EXACT,
    );
  });
});

describe("a disc", () => {
  it.each<Target>([
    EDGE,
    FACE,
    { ...EDGE, offsetMm: 60 },
    { ...EDGE, offsetMm: -99 },
    { kind: "round", radiusMm: 15, offsetMm: 0 },
    { kind: "round", radiusMm: 15, offsetMm: -110 },
  ])("is not bitten into by %o", (target) => {
    const { maxMm, passedShare } = bite(circle(TIP), target, 30);
    expectClose(maxMm, 0, EXACT, TIP);
    expect(passedShare).toBe(0);
  });

  it("is passed by a line beside it: to be looked at before asking", () => {
    expect(() => biteProfile(circle(TIP), "ccw", { ...EDGE, offsetMm: 100.1 })).toThrow(RangeError);
  });
});

describe("teeth only", () => {
  const SHORT = 80;
  /** A tooth and a corner half a turn behind it, everything else deep inside. */
  const tailed = polygon(
    offered([
      ...[behind(ROOT, 0), behind(TIP, 0), behind(ROOT, 0.01), behind(ROOT, 0.25)],
      ...[behind(ROOT, 0.49), behind(SHORT, 0.5), behind(ROOT, 0.51), behind(ROOT, 0.75)],
    ]),
  );
  const limitOf = (outer: Loop, target: Target) => teethOnly(biteProfile(outer, "ccw", target), SPIN);

  it("ends at 2f(R − R2) on an edge, at the tail", () => {
    const { closingMPerS, endedBy } = limitOf(tailed, EDGE);
    expectClose(closingMPerS ?? 0, speedOf((TIP - SHORT) / Math.PI), EXACT);
    expectClose(endedBy?.point?.x, -SHORT, EXACT);
    expect(endedBy?.part).toBe("rest");
  });

  // The path of the face touches R·cos θ where it clears the tip and R2·cos(θ − π) where it first finds the tail.
  it("ends on a face where one path touches the cosines of both", () => {
    const spare = (kappa: number) => {
      const [cleared, met] = [Math.asin(kappa / TIP), Math.PI + Math.asin(kappa / SHORT)];
      return kappa * (met - cleared) - (TIP * Math.cos(cleared) - SHORT * Math.cos(met - Math.PI));
    };
    const { closingMPerS, endedBy } = limitOf(tailed, FACE);
    expectClose(closingMPerS ?? 0, speedOf(rootOf(spare, 0.1, 30)), EXACT);
    expectClose(endedBy?.point?.x, -SHORT, EXACT);
  });

  // The tip is an arc of radius ρ about (R − ρ, 0): the path touches it where its slope is κ, and lands on the tail.
  it("counts a rounded top as tooth", () => {
    const rho = 6;
    const bar = roundedLoop(rho, SHORT);
    const spare = (kappa: number) => {
      const at = topWhere(rho, kappa);
      return kappa * (Math.PI + at.phi) - (at.r - SHORT);
    };
    const { closingMPerS, endedBy } = limitOf(bar, EDGE);
    expectClose(closingMPerS ?? 0, speedOf(rootOf(spare, 0.1, 30)), EXACT);
    expectClose(endedBy?.point?.x, -SHORT, EXACT);
  });

  /** The polar place on the rounding at which r falls by κ a radian; φ is against the sense of the spin, below 0. */
  function topWhere(rho: number, kappa: number) {
    const place = (s: number) => {
      const [x, y] = [TIP - rho + rho * Math.cos(s), -rho * Math.sin(s)];
      const r = Math.hypot(x, y);
      // r dr = −(TIP − ρ)ρ sin s ds, r² dθ = ρ(ρ + (TIP − ρ) cos s) ds.
      const slope = ((TIP - rho) * Math.sin(s) * r) / (rho + (TIP - rho) * Math.cos(s));
      return { r, phi: Math.atan2(y, x), slope };
    };
    return place(rootOf((s) => place(s).slope - kappa, 0, 1.2));
  }
});

/** A tooth whose tip is an arc of radius ρ about (R − ρ, 0), and a tail opposite. */
function roundedLoop(rho: number, tail: number): Loop {
  // Counter-clockwise: the tail, the waist, the back of the tooth, its rounding, its face, the waist again.
  const half = 1.25;
  const centre: Pair = [TIP - rho, 0];
  const at = (s: number): Pair => [centre[0] + rho * Math.cos(s), rho * Math.sin(s)];
  const [from, to] = [at(-half), at(half)];
  return bulgeLoop([
    [-tail, 0, 0],
    [-ROOT, -10, 0],
    [0, -ROOT, 0],
    [ROOT, -12, 0],
    [from[0], from[1], Math.tan(half / 2)],
    [to[0], to[1], 0],
    [ROOT, 12, 0],
    [0, ROOT, 0],
    [-ROOT, 10, 0],
  ]);
}
