/** The bite: a whole curve with its clean bite, from small bars to absurd ones, and one speed against stepping. */
import { biteAt, biteCurve, biteProfile, cleanBite } from "../../geometry/bite/bite.ts";
import type { Target } from "../../geometry/language/design.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { FINE, stepBite } from "../bite/stepping.ts";
import { type BulgeCorner, bulgeLoop } from "../support/loops.ts";
import type { BenchCase } from "./harness.ts";

const AREA = "bite";
const STEPPED = "one speed by stepping";
const SPIN = { radPerS: 440, squareStrikeRad: (35 * Math.PI) / 180 };
const CURVE = { ...SPIN, fromMPerS: 0.5, toMPerS: 6, count: 40 };
const SPEED_M_PER_S = 3;

/** Three teeth, each a radial face and a back of lines and arcs in turn that rises to it: `segments` in all. */
function threeTeeth(segments: number): Loop {
  const perTooth = segments / 3;
  return bulgeLoop(
    [0, 1, 2].flatMap((tooth) =>
      Array.from({ length: perTooth }, (_, i): BulgeCorner => {
        const share = i / (perTooth - 1);
        const angle = (2 * Math.PI * (tooth + 0.999 * share)) / 3;
        const radius = 60 + 40 * share;
        return [radius * Math.cos(angle), radius * Math.sin(angle), i % 2 === 1 && share < 1 ? 0.02 : 0];
      }),
    ),
  );
}

/** Both ways round, as the backs lie mostly in the dark one way and mostly in the light the other. */
function wholeCurve(outer: Loop): number {
  let sum = 0;
  for (const direction of ["ccw", "cw"] as const) {
    const profile = biteProfile(outer, direction);
    for (const { maxMm, meanMm } of biteCurve(profile, CURVE)) sum += maxMm + meanMm;
    sum += cleanBite(profile, SPIN).closingMPerS ?? 0;
  }
  return sum;
}

/** Forty speeds with the strikes of each, as an editor asks for them on each key. */
function strikeMaps(outer: Loop, target: Target): number {
  const points = biteCurve(biteProfile(outer, "ccw", target), CURVE);
  return points.reduce((sum, { strikes }) => sum + strikes.length, 0);
}

const TARGETS: readonly Target[] = [
  { kind: "edge", radiusMm: 0, offsetMm: 0 },
  { kind: "face", radiusMm: 0, offsetMm: 0 },
  { kind: "round", radiusMm: 5, offsetMm: 0 },
  { kind: "edge", radiusMm: 0, offsetMm: 20 },
];

const [small, middling, large] = [threeTeeth(60), threeTeeth(600), threeTeeth(9999)];
const profile = biteProfile(small, "ccw");

export const cases: readonly BenchCase[] = [
  ...TARGETS.map((target): BenchCase => {
    const told = target.offsetMm === 0 ? target.kind : `${target.kind} ${target.offsetMm} mm aside`;
    const name = `40 speeds with strike map, ${told}`;
    return {
      area: AREA,
      name,
      inputs: "60 segments, profile included",
      run: () => strikeMaps(small, target),
    };
  }),
  {
    area: AREA,
    name: "one speed",
    peer: STEPPED,
    target: 1000,
    inputs: "60 segments; good to 1e-9",
    run: () => biteAt(profile, { ...SPIN, closingMPerS: SPEED_M_PER_S }).maxMm,
  },
  {
    area: AREA,
    name: STEPPED,
    inputs: `60 segments; ${FINE.phases} phases, good to 1e-6`,
    run: () => stepBite(small, "ccw", (SPEED_M_PER_S * 1000) / SPIN.radPerS, FINE).maxMm,
  },
  ...[small, middling, large].map((outer): BenchCase => {
    const inputs = `${outer.segments.length} segments, both ways`;
    return { area: AREA, name: `2 × 40 speeds and clean bite, ${inputs}`, run: () => wholeCurve(outer) };
  }),
];
