/**
 * Five hundred bars at random and the samples, both ways round, against following phase by phase. Advances run
 * from a hundredth of a turn's worth of bite to more than the bar can take.
 */
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { biteAt, biteProfile } from "../../geometry/bite/bite.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { SAMPLES } from "../samples/samples.ts";
import { disagreements, effortFor } from "./oracles/agreement.ts";
import { stepper } from "./oracles/first-contact.ts";
import { survey } from "./oracles/survey.ts";
import { seeded, variedBar } from "./random-bars.ts";
import { RAD_PER_S, SQUARE_RAD } from "./spin.ts";

function expectAgreement(outer: Loop, advanceMm: number): void {
  for (const direction of ["ccw", "cw"] as const) {
    const profile = biteProfile(outer, direction);
    const bite = biteAt(profile, {
      closingMPerS: (advanceMm * RAD_PER_S) / 1000,
      radPerS: RAD_PER_S,
      squareStrikeRad: SQUARE_RAD,
    });
    const bar = { segments: outer.segments.length, squareStrikeRad: SQUARE_RAD };
    const step = stepper(outer, direction, { kind: "edge" }, advanceMm);
    const seen = survey(step, bar, effortFor(profile.maxRadiusMm));
    expect(disagreements(outer, profile.maxRadiusMm, bite, seen), direction).toEqual([]);
  }
}

describe("an edge strikes as when it is followed", () => {
  it.each([...Array(500).keys()])("bar %i", (seed) =>
    expectAgreement(variedBar(seed), 0.1 * 500 ** seeded(seed + 1000)()),
  );

  it.each(SAMPLES)("sample $file", ({ text }) => {
    const { outline } = analyse(readSource(text));
    if (outline === null) throw new Error("a sample without an outline");
    for (const advance of [0.4, 6, 60]) expectAgreement(outline.outer, advance);
  });
});
