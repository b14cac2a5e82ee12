import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { FIGURES } from "../../geometry/figures/catalogue.ts";
import type { FigureValue } from "../../geometry/figures/figure.ts";
import { comparisonTable } from "../../geometry/files/compare-table.ts";
import { onlyDifferent } from "../../geometry/files/comparison-rows.ts";
import {
  type ComparedBar,
  type Comparison,
  compare,
  type FigureCell,
} from "../../geometry/study/compare/compare.ts";
import { differenceOf } from "../../geometry/study/compare/difference.ts";
import { SAMPLES } from "../samples/samples.ts";
import { expectClose } from "../support/close-to.ts";

/** A rectangle about the spin axis with no bore to speak of: every figure can be worked out by hand. */
function rectangle(lines = "", variants = ""): string {
  return `bar "Plank"
thickness 10 mm
density 7850 kg/m^3
let half = 100 mm
let aside = 0 mm
outline {
  from (half + aside, -20 mm)
  line (half + aside, 20 mm)
  line (aside - half, 20 mm)
  line (aside - half, -20 mm)
  close
}
spin 3000 rpm ccw
approach 1 m/s to 5 m/s
${lines}
${variants}
`;
}

function barsOf(text: string, file = "a.bar"): ComparedBar[] {
  const source = readSource(text);
  return [null, ...source.variants].map((variant) => ({ file, analysis: analyse(source, { variant }) }));
}

function cellOf(comparison: Comparison, key: string, bar = 1): FigureCell {
  const cell = comparison.figures.find((row) => row.key === key)?.cells[bar];
  if (!cell) throw new Error(`no cell of ${key}`);
  return cell;
}

function numbersIn(value: FigureValue): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null
    ? Object.values<FigureValue>(value).flatMap(numbersIn)
    : [];
}

describe("a plank of 200 × 40 × 10 mm against one of 220 mm", () => {
  const comparison = compare(barsOf(rectangle("", 'variant "longer" { half = 110 mm }')));

  it("has the difference of their masses, 0.628 kg and 0.6908 kg: a tenth more", () => {
    const mass = cellOf(comparison, "massKg");
    expectClose(Number(mass.value), 0.6908, 1e-12);
    expectClose(Number(mass.difference), 0.0628, 1e-12);
    expectClose(mass.percent ?? undefined, 10, 1e-12);
    expect(mass).toMatchObject({ same: false, verdict: "worse" });
  });

  // From memory: a rectangular plate has I = m(a² + b²)/12 about its middle.
  it("has the difference of their moments of inertia", () => {
    const [short, long] = [(0.628 * (0.2 ** 2 + 0.04 ** 2)) / 12, (0.6908 * (0.22 ** 2 + 0.04 ** 2)) / 12];
    const inertia = cellOf(comparison, "inertiaKgM2");
    expectClose(Number(inertia.difference), long - short, 1e-11);
    expectClose(inertia.percent ?? undefined, 100 * (long / short - 1), 1e-11);
    expect(inertia.verdict).toBe("better");
  });

  it("tells the extent side by side, without a percentage", () => {
    expect(cellOf(comparison, "boundsMm")).toMatchObject({
      value: [-110, -20, 110, 20],
      difference: [-10, 0, 10, 0],
      percent: null,
      same: false,
      verdict: null,
    });
  });

  it("finds what is the same, rounding of the sums included", () => {
    for (const key of ["segments", "rpm", "direction", "imbalanceGMm", "eccentricityMm", "centroidMm"])
      expect(cellOf(comparison, key), key).toMatchObject({ same: true, verdict: "same" });
    expect(cellOf(comparison, "imbalanceGMm").percent).toBeNull();
    expect(cellOf(comparison, "imbalanceDeg")).toMatchObject({ value: null, same: true, verdict: null });
  });

  it("has every figure of the catalogue once, in its order, but the curve", () => {
    const keys = FIGURES.map(({ key }) => key).filter((key) => key !== "curve");
    expect(comparison.figures.map(({ key }) => key)).toEqual(keys);
  });

  it("lays both outlines over each other", () => {
    expect(comparison.outlines?.boundsMm).toEqual([-110, -20, 110, 20]);
    expect(comparison.outlines?.outlines.map((outline) => outline?.outer.segments.length)).toEqual([4, 4]);
  });
});

describe("words and unknown values", () => {
  it("shows words, and what is the same of them", () => {
    const comparison = compare(barsOf(rectangle("target edge", 'variant "flat" { target face }')));
    expect(cellOf(comparison, "target")).toEqual({
      value: "face",
      difference: null,
      percent: null,
      same: false,
      verdict: null,
    });
  });

  it("gives no difference to what is not known", () => {
    const weightless = rectangle().replace("density 7850 kg/m^3\n", "");
    const comparison = compare([...barsOf(rectangle()), ...barsOf(weightless, "b.bar")]);
    const unknown = { value: null, difference: null, percent: null, same: false, verdict: null };
    expect(cellOf(comparison, "massKg")).toEqual(unknown);
    const turned = compare([...barsOf(weightless, "b.bar"), ...barsOf(rectangle())]);
    expect(cellOf(turned, "massKg")).toMatchObject({ difference: null, percent: null, same: false });
    expect(cellOf(turned, "massKg", 0)).toMatchObject({ value: null, same: true, verdict: null });
  });

  it("takes the shorter way between two heavy sides", () => {
    const pairs = [
      [350, 10, 20],
      [10, 350, -20],
      [0, 180, 180],
      [90, 100, 10],
    ] as const;
    for (const [from, to, difference] of pairs)
      expect(Math.abs(Number(differenceOf(from, to, "angle", 360).difference))).toBe(Math.abs(difference));
    expect(differenceOf(350, 10, "angle", 360)).toMatchObject({ difference: 20, percent: null });
  });

  it("compares bars without an outline or a bite", () => {
    const comparison = compare([...barsOf('bar "x"\n'), ...barsOf(rectangle(), "b.bar")]);
    expect(comparison.bars[0]?.errors).toBeGreaterThan(0);
    expect(comparison.outlines?.outlines[0]).toBeNull();
    expect(comparison.bite?.bars[0]).toBeNull();
    expect(comparison.bite?.bars[1]?.[0]?.ofMax).toEqual({ difference: null, percent: null, same: false });
    const nothing = compare(barsOf('bar "x"\n'));
    expect(nothing).toMatchObject({ outlines: null, bite: null });
  });

  it("asks for a bar", () => {
    expect(() => compare([])).toThrow(RangeError);
  });
});

describe("requirements decide", () => {
  const verdicts = (lines: string, variants: string, key: string) =>
    cellOf(compare(barsOf(rectangle(lines, variants))), key).verdict;

  it("a limit that is newly broken is worse, whatever is usually wanted", () => {
    // More energy is usually better; here the class forbids it.
    const longer = 'variant "v" { half = 110 mm }';
    expect(verdicts("", longer, "energyJ")).toBe("better");
    expect(verdicts("require energy <= 110 J", longer, "energyJ")).toBe("worse");
  });

  it("a limit that is newly kept is better", () => {
    expect(verdicts("require mass >= 0.65 kg", 'variant "v" { half = 110 mm }', "massKg")).toBe("better");
  });

  it("of two that break it the nearer one is better", () => {
    const require = "require mass >= 2 kg";
    expect(verdicts(require, 'variant "v" { half = 110 mm }', "massKg")).toBe("better");
    expect(verdicts(require, 'variant "v" { half = 90 mm }', "massKg")).toBe("worse");
  });

  it("where both keep it, what is usually wanted tells", () => {
    expect(verdicts("require mass <= 2 kg", 'variant "v" { half = 110 mm }', "massKg")).toBe("worse");
    expect(
      verdicts("require max_radius <= 150 mm", 'variant "v" { half = 110 mm }', "maxRadiusMm"),
    ).toBeNull();
  });

  it("holds a file that states none to those of the others", () => {
    const [a, b] = [
      barsOf(rectangle("require mass <= 0.65 kg")),
      barsOf(rectangle().replaceAll("100 mm", "110 mm"), "b.bar"),
    ];
    const [row] = compare([...a, ...b]).requirements;
    expect(row).toMatchObject({ figure: "mass", key: "massKg", relation: "<=", atMPerS: null });
    expect(row?.cells.map(({ own, holds, verdict }) => ({ own, holds, verdict }))).toEqual([
      { own: true, holds: true, verdict: "same" },
      { own: false, holds: false, verdict: "worse" },
    ]);
    expectClose(row?.cells[1]?.margin ?? undefined, 0.65 - 0.6908, 1e-11);
  });

  it("judges a bite at a closing speed", () => {
    const text = rectangle("require bite at 3 m/s >= 5 mm", 'variant "fast" { spin 30000 rpm ccw }');
    const [row] = compare(barsOf(text)).requirements;
    expect(row).toMatchObject({ key: "maxMm", measure: "length", atMPerS: 3, label: "Bite at 3 m/s" });
    expect(row?.cells.map(({ holds }) => holds)).toEqual([true, false]);
  });
});

describe("the bite", () => {
  it("is told at the closing speeds of the reference", () => {
    const text = rectangle("", 'variant "v" { approach 2 m/s to 9 m/s }');
    const { bite } = compare(barsOf(text));
    expect(bite?.closingMPerS.at(0)).toBe(1);
    expect(bite?.closingMPerS.at(-1)).toBe(5);
    expect(bite?.bars.map((bar) => bar?.length)).toEqual([40, 40]);
    expect(bite?.bars[1]?.every(({ ofMax, ofMean }) => ofMax.same && ofMean.same)).toBe(true);
  });

  // Geometry alone: twice the closing speed at twice the spin is the same path over the bar.
  it("is the same at twice the speed and twice the spin", () => {
    const bars = barsOf(rectangle("", 'variant "v" { spin 6000 rpm ccw }'));
    const { bite } = compare(bars);
    const [slow, fast] = bite?.bars ?? [];
    const atTwo = bars[1]?.analysis.assessment.bite?.at(2 * (bite?.closingMPerS[0] ?? 0));
    expectClose(atTwo?.maxMm, slow?.[0]?.maxMm ?? 0, 1e-9);
    expect(fast?.[0]?.ofMax.difference).toBeLessThan(0);
  });
});

describe("any bars", () => {
  const plank = fc.record({
    half: fc.integer({ min: 60, max: 150 }),
    aside: fc.integer({ min: -20, max: 20 }),
    rpm: fc.integer({ min: 1000, max: 9000 }),
  });
  const barOf = ({ half, aside, rpm }: { half: number; aside: number; rpm: number }) =>
    barsOf(
      rectangle("require mass <= 0.6 kg\nrequire imbalance <= 2000 g*mm")
        .replace("100 mm", `${half} mm`)
        .replace("let aside = 0 mm", `let aside = ${aside} mm`)
        .replace("3000 rpm", `${rpm} rpm`),
    );

  it("differ from themselves in nothing", () => {
    for (const { file, text } of SAMPLES) {
      const [bar] = barsOf(text, file);
      if (!bar) throw new Error("no bar");
      const comparison = compare([bar, bar]);
      for (const { key, cells } of comparison.figures) {
        expect(cells[1], `${file} ${key}`).toMatchObject({ same: true });
        expect(numbersIn(cells[1]?.difference ?? null).every((part) => part === 0)).toBe(true);
        expect([0, null]).toContain(cells[1]?.percent);
      }
      for (const { cells } of comparison.requirements) expect([null, "same"]).toContain(cells[1]?.verdict);
      for (const { ofMax } of comparison.bite?.bars[1] ?? [])
        expect(ofMax).toMatchObject({ difference: 0, same: true });
      for (const system of ["mm", "in"] as const)
        expect(onlyDifferent(comparisonTable([bar, bar], comparison, system)).sections).toEqual([]);
    }
  });

  it("swap the sign and the verdict with the reference", () => {
    const opposite = { better: "worse", worse: "better", same: "same" } as const;
    fc.assert(
      fc.property(plank, plank, (one, other) => {
        const [a, b] = [barOf(one), barOf(other)];
        const [there, back] = [compare([...a, ...b]), compare([...b, ...a])];
        for (const { key } of there.figures) {
          const [to, from] = [cellOf(there, key), cellOf(back, key)];
          expect(from.same, key).toBe(to.same);
          const [sent, returned] = [numbersIn(to.difference), numbersIn(from.difference)];
          expect(returned).toHaveLength(sent.length);
          // Two heavy sides half a turn apart lie either way.
          if (key !== "imbalanceDeg")
            for (const [i, part] of sent.entries()) expect(part + (returned[i] ?? 1)).toBe(0);
          // Of two limits on one figure one may be newly broken and the other newly kept: both ways a loss.
          if (to.verdict && from.verdict) expect(from.verdict, key).toBe(opposite[to.verdict]);
        }
        for (const [i, { cells }] of there.requirements.entries()) {
          const verdict = cells[1]?.verdict;
          if (verdict) expect(back.requirements[i]?.cells[1]?.verdict).toBe(opposite[verdict]);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("tell whichever bars of the samples in a table of whole rows", () => {
    const bars = SAMPLES.flatMap(({ file, text }) => barsOf(text, file));
    const table = comparisonTable(bars, compare(bars), "mm");
    expect(table.columns).toHaveLength(bars.length);
    expect(new Set(table.columns).size).toBe(bars.length);
    for (const { rows } of table.sections) {
      for (const { cells } of rows) {
        expect(cells).toHaveLength(bars.length);
        for (const { value, difference, percent } of cells) {
          expect(`${value}${difference}${percent}`).not.toMatch(/undefined|NaN|\[object|null/);
          expect(value).not.toBe("");
        }
      }
    }
  });
});
