/** The samples are what a newcomer copies: each must be right, balanced, tidy and cut as drawn. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { type Analysis, analyse, checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { biteAt, biteProfile } from "../../geometry/bite/bite.ts";
import { exportFile } from "../../geometry/files/export.ts";
import { isBlockWord } from "../../geometry/language/blocks/blocks.ts";
import { format } from "../../geometry/language/format.ts";
import { stepBite } from "../bite/stepping.ts";
import { figuresOf } from "../readers/curve-figures.ts";
import { type FoundDrawing, readWithDxfParser, readWithEzdxf } from "../readers/dxf-readers.ts";
import { expectClose } from "../support/close-to.ts";
import { SAMPLES } from "./samples.ts";

const folder = mkdtempSync(join(tmpdir(), "barwright-samples-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ANALYSED = SAMPLES.map(({ file, text }) => ({ file, text, analysis: analyse(readSource(text)) }));

function cutFile(analysis: Analysis, release: "2000" | "r12"): string {
  const result = exportFile(analysis, "dxf", { release, units: "mm" });
  if (!result.ok) throw new Error(result.reason);
  return result.content;
}

it("there are at least six", () => {
  expect(SAMPLES.length).toBeGreaterThanOrEqual(6);
});

describe.each(ANALYSED)("$file", ({ file, text, analysis }) => {
  it("has no problem in any variant", () => {
    const problems = checkSource(readSource(text));
    expect(problems.filter(({ severity }) => severity !== "information")).toEqual([]);
  });

  it("is laid out as the formatter lays it out", () => {
    expect(format(text)).toBe(text);
  });

  it("knows every figure", () => {
    // What the fight around the bar gives is known where the file has its block.
    const told = Object.entries(analysis.figures).filter(
      ([group]) => !isBlockWord(group) || analysis.design[group] !== null,
    );
    const unknown = told.flatMap(([group, values]) =>
      Object.entries(values).flatMap(([key, value]) => (value === null ? [`${group}.${key}`] : [])),
    );
    // A bar that is balanced by its symmetry has no heavy side.
    expect(unknown.filter((key) => key !== "mass.imbalanceDeg")).toEqual([]);
  });

  it("is balanced within G6.3 by the distance and spin of its own centroid", () => {
    const { section, design } = analysis.assessment;
    const offset = Math.hypot(section?.centroidMm?.x ?? Infinity, section?.centroidMm?.y ?? Infinity);
    expect(offset * (design.spin?.radPerS ?? Infinity)).toBeLessThanOrEqual(6.3);
  });

  it.each(["ccw", "cw"] as const)("bites %s as stepping finds it", (direction) => {
    const { outline, design } = analysis;
    const radPerS = design.spin?.radPerS ?? Number.NaN;
    if (!outline) throw new Error("no outline");
    const profile = biteProfile(outline.outer, direction);
    const speeds = [design.approach?.fromMPerS ?? 0.5, 2, design.approach?.toMPerS ?? 6];
    for (const closingMPerS of speeds) {
      const bite = biteAt(profile, { closingMPerS, radPerS, squareStrikeRad: (35 * Math.PI) / 180 });
      const stepped = stepBite(outline.outer, direction, (closingMPerS * 1000) / radPerS);
      expect(Math.abs(bite.maxMm - stepped.maxMm)).toBeLessThan(1e-4 * profile.maxRadiusMm);
      expect(Math.abs(bite.meanMm - stepped.meanMm)).toBeLessThan(1e-4 * profile.maxRadiusMm);
    }
  });

  it("cuts as drawn, by two independent readers, with nothing to fix, in the same bytes each time", () => {
    for (const release of ["2000", "r12"] as const) {
      const dxf = cutFile(analysis, release);
      expect(cutFile(analyse(readSource(text)), release)).toBe(dxf);
      writeFileSync(join(folder, `${file}-${release}.dxf`), dxf);
      expectAsDrawn(readWithDxfParser(dxf), analysis);
    }
    for (const found of readWithEzdxf(folder).values()) expect([...found.errors, ...found.fixes]).toEqual([]);
    const audited = readWithEzdxf(folder).get(`${file}-2000.dxf`);
    if (!audited) throw new Error("ezdxf did not read the file");
    expectAsDrawn(audited, analysis);
  });
});

function expectAsDrawn({ curves }: Pick<FoundDrawing, "curves">, { assessment, outline }: Analysis): void {
  const outer = curves.filter(({ layer }) => layer === "CUT_OUTER");
  const inner = curves.filter(({ layer }) => layer === "CUT_INNER");
  expect([outer.length, inner.length]).toEqual([1, outline?.inner.length]);
  expectClose(figuresOf(outer, inner).area, assessment.section?.areaMm2 ?? Number.NaN, 1e-9);
}
