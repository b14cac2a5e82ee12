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
import { type Contact, evenPhases, stepper } from "./oracles/first-contact.ts";
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
function targetFor(kind: Target["kind"], seed: number, maxRadiusMm: number): Target {
  const random = seeded(seed + 2000);
  const radiusMm = kind === "round" ? maxRadiusMm * 0.003 * 100 ** random() : 0;
  const aside = kind === "face" || seed % 2 === 0 ? 0 : 1.96 * (random() - 0.5);
  return { kind, radiusMm, offsetMm: aside * (maxRadiusMm + radiusMm) };
}

const KINDS = ["edge", "round", "face"] as const;

describe.each(KINDS)("every figure against an oncoming %s is as followed", (kind) => {
  it.each([...Array(500).keys()])("on bar %i", (seed) => {
    const outer = variedBar(seed);
    const target = targetFor(kind, seed, largestRadius(outer.segments));
    expectAgreement(outer, target, 0.1 * 500 ** seeded(seed + 1000)());
  });

  it.each(SAMPLES)("on sample $file", ({ text }) => {
    const { outline } = analyse(readSource(text));
    if (outline === null) throw new Error("a sample without an outline");
    const { outer } = outline;
    const rim = largestRadius(outer.segments);
    const radiusMm = kind === "round" ? 5 : 0;
    for (const advance of [0.4, 6, 60]) expectAgreement(outer, { kind, radiusMm, offsetMm: 0 }, advance);
    if (kind === "face") return;
    for (const share of [0.3, -0.8]) expectAgreement(outer, { kind, radiusMm, offsetMm: share * rim }, 25);
  });
});

/*
 * Evenly spread phases alone, with nothing refined where it matters. With J places where the strike changes each
 * share and each mean is known to J half spacings of it.
 */
describe.each(KINDS)("evenly spread phases against an oncoming %s agree", (kind) => {
  const PHASES = 3000;
  it.each([0, 1, 2, 5])("on bar %i", (seed) => {
    const outer = variedBar(seed);
    const maxRadiusMm = largestRadius(outer.segments);
    const target = targetFor(kind, seed, maxRadiusMm);
    const bite = biteAt(biteProfile(outer, "cw", target), {
      closingMPerS: (18 * RAD_PER_S) / 1000,
      radPerS: RAD_PER_S,
      squareStrikeRad: SQUARE_RAD,
    });
    const contacts = evenPhases(stepper(outer, "cw", target, 18), PHASES);
    const landsOn = ({ hit }: Contact) => hit?.segment ?? -1;
    const jumps = contacts.filter((c, i) => landsOn(c) !== landsOn(contacts.at(i - 1) ?? c)).length;
    expect(jumps).toBeGreaterThan(1);
    const within = (jumps + 1) / (2 * PHASES);
    const mean = contacts.reduce((sum, { depthMm }) => sum + depthMm, 0) / PHASES;
    const passed = contacts.filter((c) => c.passed).length / PHASES;
    const square =
      contacts.filter(({ hit }) => hit !== null && hit.strikeAngleRad <= SQUARE_RAD).length / PHASES;
    expect(Math.abs(mean - bite.meanMm)).toBeLessThan(within * bite.maxMm);
    expect(Math.max(...contacts.map(({ depthMm }) => depthMm))).toBeLessThan(bite.maxMm + 1e-6 * maxRadiusMm);
    expect(Math.abs(passed - bite.passedShare)).toBeLessThan(within);
    expect(Math.abs(square - bite.squareShare)).toBeLessThan(within);
  });
});
