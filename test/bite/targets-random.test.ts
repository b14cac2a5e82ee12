/**
 * Five hundred bars at random and the samples, against edges, rounded edges and faces, both ways round, beside
 * following phase by phase. Advances run from a hundredth of a turn's worth of bite to more than the bar can take.
 */
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { biteAt, biteProfile } from "../../geometry/bite/bite.ts";
import type { Target } from "../../geometry/language/design.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { SAMPLES } from "../samples/samples.ts";
import { disagreements, effortFor } from "./oracles/agreement.ts";
import { stepper } from "./oracles/first-contact.ts";
import { largestRadius } from "./oracles/stretches.ts";
import { survey } from "./oracles/survey.ts";
import { seeded, variedBar } from "./random-bars.ts";
import { RAD_PER_S, SQUARE_RAD } from "./spin.ts";

function expectAgreement(outer: Loop, target: Target, advanceMm: number): void {
  for (const direction of ["ccw", "cw"] as const) {
    const bite = biteAt(biteProfile(outer, direction, target), {
      closingMPerS: (advanceMm * RAD_PER_S) / 1000,
      radPerS: RAD_PER_S,
      squareStrikeRad: SQUARE_RAD,
    });
    const maxRadiusMm = largestRadius(outer.segments);
    const bar = { segments: outer.segments.length, squareStrikeRad: SQUARE_RAD };
    const seen = survey(stepper(outer, direction, target, advanceMm), bar, effortFor(maxRadiusMm));
    const case_ = `${direction}, advance ${advanceMm}, ${JSON.stringify(target)}`;
    expect(disagreements(maxRadiusMm, bite, seen), case_).toEqual([]);
  }
}

/** Every other one straight at the axis; the others anywhere on the circle that is swept. */
function targetsFor(seed: number, maxRadiusMm: number): Target[] {
  const random = seeded(seed + 2000);
  const radiusMm = maxRadiusMm * 0.003 * 100 ** random();
  const aside = seed % 2 === 0 ? 0 : 1.96 * (random() - 0.5);
  return [
    { kind: "edge", radiusMm: 0, offsetMm: aside * maxRadiusMm },
    { kind: "round", radiusMm, offsetMm: aside * (maxRadiusMm + radiusMm) },
    { kind: "face", radiusMm: 0, offsetMm: 0 },
  ];
}

const KINDS = ["edge", "round", "face"] as const;

describe.each(KINDS)("every figure against an oncoming %s is as followed", (kind) => {
  it.each([...Array(500).keys()])("on bar %i", (seed) => {
    const outer = variedBar(seed);
    const [advance, target] = [0.1 * 500 ** seeded(seed + 1000)(), KINDS.indexOf(kind)];
    const targets = targetsFor(seed, largestRadius(outer.segments));
    for (const one of targets.slice(target, target + 1)) expectAgreement(outer, one, advance);
  });

  it.each(SAMPLES)("on sample $file", ({ text }) => {
    const { outline } = analyse(readSource(text));
    if (outline === null) throw new Error("a sample without an outline");
    const { outer } = outline;
    const rim = largestRadius(outer.segments);
    const offsets = kind === "face" ? [0] : [0, 0.3 * rim, -0.8 * rim];
    for (const offsetMm of offsets) {
      for (const advance of [0.4, 6, 60])
        expectAgreement(outer, { kind, radiusMm: kind === "round" ? 5 : 0, offsetMm }, advance);
    }
  });
});
