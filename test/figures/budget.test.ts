/** Sums of the weigh-in budget, against sums done by hand and against the definition. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { budgetSums, leaveOff } from "../../geometry/figures/budget.ts";
import { analysisJson } from "../../geometry/files/json.ts";

/** 200 × 50 × 10 mm of 7850 kg/m³ less a bore of 20 mm: 0.785 kg − π/4·0.02²·0.01·7850 kg. */
const BAR_KG = 0.785 - (Math.PI / 4) * 0.02 ** 2 * 0.01 * 7850;
const BAR = `thickness 10 mm
density 7850 kg/m^3
outline { from (100 mm, -25 mm) line (100 mm, 25 mm) line (-100 mm, 25 mm) line (-100 mm, -25 mm) close }
bore 20 mm
spin 3000 rpm ccw
`;

function assessed(text: string) {
  return analyse(readSource(`${BAR}${text}`)).assessment;
}

describe("the budget", () => {
  it("is the bar by its outline and each part as often as it is there", () => {
    const sums = budgetSums(
      assessed('budget { limit 6 kg part "frame" 2.1 kg part "wheel" 120 g count 4 scale 3.4 kg }'),
    );
    expect(sums?.partsMassKg).toBeCloseTo(2.1 + 4 * 0.12, 12);
    expect(sums?.totalMassKg).toBeCloseTo(BAR_KG + 2.58, 12);
    expect(sums?.marginKg).toBeCloseTo(6 - 2.58 - BAR_KG, 12);
    expect(sums?.scaleDifferenceKg).toBeCloseTo(3.4 - 2.58 - BAR_KG, 12);
  });

  it("does not know what it cannot", () => {
    expect(budgetSums(assessed(""))).toBeNull();
    const without = budgetSums(assessed('budget { part "frame" 2 kg }'));
    expect(without).toMatchObject({
      limitKg: null,
      marginKg: null,
      scaleMassKg: null,
      scaleDifferenceKg: null,
    });
    expect(budgetSums(assessed('budget { limit 6 kg part "frame" 2 mm }'))).toMatchObject({
      partsMassKg: null,
      totalMassKg: null,
      limitKg: 6,
      marginKg: null,
    });
  });

  it("lists what to leave off by what it saves: spare parts, or all where none is spare", () => {
    const names = (text: string) => {
      const { budget } = assessed(text).design;
      return budget && leaveOff(budget, -0.5).map(({ part, marginKg }) => [part.name, marginKg]);
    };
    expect(names('budget { part "a" 100 g part "b" 80 g count 2 part "c" 300 g }')).toEqual([
      ["c", expect.closeTo(-0.2, 12)],
      ["b", expect.closeTo(-0.34, 12)],
      ["a", expect.closeTo(-0.4, 12)],
    ]);
    expect(names('budget { part "a" 100 g spare part "c" 300 g }')).toEqual([
      ["a", expect.closeTo(-0.4, 12)],
    ]);
  });

  it("adds up whatever the parts, and leaving one off wins what it weighs", () => {
    const part = fc.tuple(fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 1, max: 9 }), fc.boolean());
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 10 }), (parts) => {
        const lines = parts.map(([grams, count, spare], i) => {
          return `part "${i}" ${grams} g count ${count}${spare ? " spare" : ""}`;
        });
        const assessment = assessed(`budget {\nlimit 20 kg\n${lines.join("\n")}\n}`);
        const sums = budgetSums(assessment);
        const grams = parts.reduce((sum, [each, count]) => sum + each * count, 0);
        expect(sums?.totalMassKg).toBeCloseTo(BAR_KG + grams / 1000, 9);
        const { budget } = assessment.design;
        const off = budget ? leaveOff(budget, sums?.marginKg ?? null) : [];
        const saved = off.map(({ savesKg }) => savesKg);
        expect(saved).toEqual([...saved].sort((a, b) => b - a));
        for (const { marginKg, savesKg } of off)
          expect(marginKg).toBeCloseTo((sums?.marginKg ?? Number.NaN) + savesKg, 9);
      }),
      { numRuns: 50 },
    );
  });
});

type Json = Readonly<Record<string, unknown>>;

describe("the JSON", () => {
  it("has the groups of blocks with the same keys, with and without them", () => {
    const json = (text: string) => {
      const { budget, event } = analysisJson(analyse(readSource(`${BAR}${text}`)));
      return { budget: { ...budget } as Json, event: { ...event } as Json };
    };
    const [without, withBoth] = [json(""), json("budget { limit 6 kg }\nevent { measured_spin_down 42 s }")];
    for (const group of ["budget", "event"] as const) {
      expect(Object.keys(without[group])).toEqual(Object.keys(withBoth[group]));
      expect(Object.values(without[group]).every((value) => value === null)).toBe(true);
    }
    expect(withBoth.budget["limitKg"]).toBe(6);
    expect(withBoth.event["measuredSpinDownS"]).toBe(42);
  });
});
