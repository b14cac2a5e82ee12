/** The test-day sheet: its speeds against the analysis of the same bar at that spin, its limits, its length. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { standingOf } from "../../geometry/analysis/judge.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { CAUTIONS } from "../../geometry/files/cautions.ts";
import { rpmAtLimit, sheetSteps, testDaySheet } from "../../geometry/files/sheet.ts";
import { statedLimits } from "../../geometry/language/stated-limits.ts";
import { SAMPLES } from "../samples/samples.ts";
import { expectClose } from "../support/close-to.ts";

/** A bar of 340 mm from tip to tip. */
function plate(spin: string, more = "") {
  const text = `bar "Plank"
thickness 10 mm
density 7850 kg/m^3
outline { from (170 mm, 0 mm) line (150 mm, 25 mm) line (-170 mm, 0 mm) line (-150 mm, -25 mm) close }
bore 20 mm
${spin}
${more}
`;
  return analyse(readSource(text));
}

describe("the speeds", () => {
  it("are those of the bar at that spin", () => {
    const { assessment } = plate("spin 4200 rpm ccw");
    const steps = sheetSteps(assessment);
    expect(steps.map(({ rpm }) => rpm)).toEqual([500, 1000, 1500, 2000, 2500, 3000, 3500, 4000, 4200]);
    for (const { rpm, tipMPerS, energyJ, cleanMPerS } of steps) {
      const { figures } = plate(`spin ${rpm} rpm ccw`);
      expectClose(tipMPerS ?? undefined, Number(figures.spin["tipSpeedMPerS"]), 1e-12);
      expectClose(energyJ ?? undefined, Number(figures.spin["energyJ"]), 1e-12);
      expectClose(cleanMPerS ?? undefined, Number(figures.bite["cleanBiteMPerS"]), 1e-9);
    }
  });

  it("give some 50 m/s at the tip of a bar of 340 mm at 2800 rpm (common practice, no source)", () => {
    const tip = sheetSteps(plate("spin 2800 rpm ccw").assessment).at(-1)?.tipMPerS ?? Number.NaN;
    expect(Math.abs(tip - 50)).toBeLessThan(0.5);
  });

  it("are ten at most, even, and end in the spin of the file", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300_000 }), (tenths) => {
        const rpm = tenths / 10 + 0.9;
        const steps = sheetSteps(plate(`spin ${rpm} rpm cw`).assessment).map((step) => step.rpm);
        expect(steps.length).toBeGreaterThanOrEqual(4);
        expect(steps.length).toBeLessThanOrEqual(10);
        expectClose(steps.at(-1), rpm, 1e-12);
        const [first = 0] = steps;
        for (const [i, step] of steps.slice(0, -1).entries()) expectClose(step, first * (i + 1), 1e-12);
      }),
      { numRuns: 60 },
    );
  });

  it("are none without a spin", () => {
    expect(sheetSteps(plate("").assessment)).toEqual([]);
    expect(testDaySheet(plate(""), "mm")).toContain("The file has no spin");
  });
});

describe("the limits", () => {
  it("tell the spin at which they are just met", () => {
    const limits = "require energy <= 500 J\nrequire clean_bite >= 2 m/s\nevent { tip_speed <= 40 m/s }";
    const { design, assessment } = plate("spin 4200 rpm ccw", limits);
    const stated = statedLimits(design);
    expect(stated).toHaveLength(3);
    for (const [i, limit] of stated.entries()) {
      const standing = standingOf(limit, assessment);
      const rpm = standing && rpmAtLimit(standing, 4200);
      if (rpm === null) continue;
      const there = plate(`spin ${rpm} rpm ccw`, limits);
      const again = statedLimits(there.design)[i];
      const margin = again ? (standingOf(again, there.assessment)?.margin ?? null) : null;
      expect(Math.abs(margin ?? Infinity) / limit.limit.value, limit.figure).toBeLessThan(1e-9);
    }
    const tip = stated.find(({ figure }) => figure === "tip_speed");
    const tipStanding = tip ? standingOf(tip, assessment) : null;
    // v = ωR: 40 m/s at 170 mm.
    expectClose(
      (tipStanding && rpmAtLimit(tipStanding, 4200)) ?? undefined,
      (40 / 0.17) * (60 / (2 * Math.PI)),
      1e-12,
    );
  });

  it("do not go with the spin where they are of the plate", () => {
    const { design, assessment } = plate("spin 4200 rpm ccw", "require mass <= 2 kg");
    const [mass] = design.requirements;
    const standing = mass ? standingOf(mass, assessment) : null;
    expect(standing && rpmAtLimit(standing, 4200)).toBeNull();
  });
});

describe("the page", () => {
  const EVENT =
    "event { tip_speed <= 75 m/s energy <= 900 J mass <= 1.5 kg spin_down <= 60 s measured_spin_down 42 s }";

  it("fits on one page, has the steps to tick off, who decides and all cautions", () => {
    const more = `require balance <= G40\nrequire bite at 3 m/s >= 2 mm\n${EVENT}`;
    const page = testDaySheet(plate("spin 4200 rpm ccw", more), "mm");
    expect(page.split("\n").length).toBeLessThanOrEqual(66);
    expect(page.match(/^- \[ \] /gm)?.length).toBeGreaterThanOrEqual(10);
    expect(page).toContain("common practice, no source");
    for (const caution of CAUTIONS) expect(page).toContain(caution);
    expect(page).toContain("The file says 42 s. The event allows 60 s.");
    expect(page).toMatch(
      /\| Tip speed \(event\) at most 75 m\/s \| 74\.77 m\/s \| 0\.2\d+ m\/s \| 4213 rpm \| met \|/,
    );
  });

  it("speaks inches where it is asked to", () => {
    expect(testDaySheet(plate("spin 4200 rpm ccw"), "in")).toMatch(/\| 4200 rpm \| 167\.\d mph \|/);
  });

  it("takes names for text", () => {
    const named = analyse(readSource('bar "<b>|*"\nspin 100 rpm ccw\n'));
    expect(testDaySheet(named, "mm").split("\n")[0]).toBe("# Test-day sheet: \\<b\\>\\|\\*");
  });

  it.each(SAMPLES)("is told of $file", ({ text }) => {
    const page = testDaySheet(analyse(readSource(text)), "mm");
    expect(page).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(page.split("\n").length).toBeLessThanOrEqual(66);
  });
});
