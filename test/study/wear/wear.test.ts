import { readFileSync } from "node:fs";
import { join } from "node:path";
import { polygonArea, polygonCentroid } from "d3-polygon";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Analysis, analyse } from "../../../geometry/analysis/analyse.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import { sectionOf } from "../../../geometry/figures/section.ts";
import type { Point } from "../../../geometry/language/design.ts";
import { isInside } from "../../../geometry/outline/check/inside.ts";
import type { Loop } from "../../../geometry/outline/segment.ts";
import { distanceToSegment, pointAt } from "../../../geometry/outline/segment-geometry.ts";
import { groundFaces } from "../../../geometry/study/wear/ground-faces.ts";
import { tipsOf } from "../../../geometry/study/wear/tips.ts";
import { type WearRequest, type WearStudy, wearStudy } from "../../../geometry/study/wear/wear.ts";
import { wornTips } from "../../../geometry/study/wear/worn-tips.ts";
import { chordsOf } from "../../support/chords.ts";
import { expectClose } from "../../support/close-to.ts";

const NAMES = [
  "brass-limpet-one-tooth",
  "pickled-heron-two-tooth",
  "lantern-crab-s-shape",
  "quiet-kettle-disc",
];
const textOf = (name: string) =>
  readFileSync(join(import.meta.dirname, `../../../samples/${name}.bar`), "utf8");
const sample = (name: string): Analysis => analyse(readSource(textOf(name)));

function outerOf({ outline }: Analysis): Loop {
  if (!outline) throw new Error("no outline");
  return outline.outer;
}

function studied(analysis: Analysis, request: WearRequest): WearStudy {
  const result = wearStudy(analysis, request);
  if (!result.ok) throw new Error(result.message);
  return result.study;
}

const areaOf = (loop: Loop) => sectionOf({ outer: loop, inner: [] }).areaMm2;

/** Each segment begins where the one before it ends. */
function expectClosed({ segments }: Loop): void {
  for (const [i, { from }] of segments.entries()) expect(segments.at(i - 1)?.to).toEqual(from);
}

describe("tips", () => {
  it("are where the bar reaches farthest, once each, counter-clockwise from +x", () => {
    expect(tipsOf(outerOf(sample("brass-limpet-one-tooth")))).toEqual([{ x: 125, y: 2 }]);
    const two = tipsOf(outerOf(sample("pickled-heron-two-tooth")));
    expect(two.map(({ x }) => Math.round(x))).toEqual([130, -130]);
  });
});

describe("worn from the tip", () => {
  it("takes a circular segment off a bar of even width (handbook: r²(θ − sin θ)/2 and chord)", () => {
    // A bar 40 mm wide, its end an arc of 100 mm about the axis: worn to 90 mm it is the same with 90 mm.
    const bar = (radius: number) => {
      const x = Math.sqrt(radius ** 2 - 20 ** 2);
      return analyse(
        readSource(
          `thickness 10 mm\ndensity 7850 kg/m^3\noutline { from (-60 mm, -20 mm) line (${x} mm, -20 mm) arc (${x} mm, 20 mm) about (0 mm, 0 mm) turning left line (-60 mm, 20 mm) close }\nbore 20 mm\nspin 3000 rpm ccw`,
        ),
      );
    };
    const worn = wornTips(outerOf(bar(100)), 90, tipsOf(outerOf(bar(100))));
    if (!worn) throw new Error("nothing left");
    expectClosed(worn);
    expectClose(areaOf(worn), areaOf(outerOf(bar(90))), 1e-10);
    const half = Math.asin(20 / 90);
    const segment = (90 ** 2 * (2 * half - Math.sin(2 * half))) / 2;
    expectClose(areaOf(worn), 40 * (60 + 90 * Math.cos(half)) + segment, 1e-10);
  });

  it("is the outline within the circle: the same area and centroid as a fine polygon cut by it", () => {
    for (const name of NAMES) {
      const outer = outerOf(sample(name));
      const tips = tipsOf(outer);
      const radius = Math.hypot(tips[0]?.x ?? 0, tips[0]?.y ?? 0);
      for (const by of [0.3, 1, 3]) {
        const worn = wornTips(outer, radius - by, tips);
        if (!worn) throw new Error(name);
        expectClosed(worn);
        // What is farther out drawn in along its ray: on these bars every ray leaves the metal once out there.
        const drawnIn = chordsOf(outer, ({ sweepRad }) => Math.ceil(Math.abs(sweepRad) * 500))
          .flatMap(([x, y], i, all): [number, number][] => {
            const [nx, ny] = all[(i + 1) % all.length] ?? [x, y];
            const pieces = Math.ceil(Math.hypot(nx - x, ny - y) / 0.02);
            return Array.from({ length: pieces }, (_, k) => [
              x + ((nx - x) * k) / pieces,
              y + ((ny - y) * k) / pieces,
            ]);
          })
          .map(([x, y]): [number, number] => {
            const scale = Math.min(1, (radius - by) / Math.hypot(x, y));
            return [x * scale, y * scale];
          });
        const { areaMm2, centroidMm } = sectionOf({ outer: worn, inner: [] });
        expectClose(areaMm2, Math.abs(polygonArea(drawnIn)), 1e-6);
        const [cx, cy] = polygonCentroid(drawnIn);
        expectClose(centroidMm?.x ?? Number.NaN, cx, 1e-6, radius);
        expectClose(centroidMm?.y ?? Number.NaN, cy, 1e-6, radius);
      }
    }
  });

  it("wears the one tooth that is asked for, and leaves the other", () => {
    const analysis = sample("pickled-heron-two-tooth");
    const [all, one] = (["all", "one"] as const).map(
      (teeth) => studied(analysis, { teeth, byMm: [1] }).rows[1]?.bar,
    );
    const whole = analysis.assessment.mass?.massKg ?? 0;
    expectClose(whole - (all?.massKg ?? 0), 2 * (whole - (one?.massKg ?? 0)), 1e-9);
    expect(all?.imbalanceGMm).toBeLessThan(1e-6);
    expect(one?.imbalanceGMm).toBeGreaterThan(1);
    // The worn side is the light one.
    expectClose(one?.imbalanceDeg ?? 0, 180, 0.01);
    expectClose(all?.tipRadiusMm ?? 0, 129, 1e-9);
    expectClose(one?.tipRadiusMm ?? 0, 130, 1e-9);
  });
});

describe("a face ground back", () => {
  it("takes a strip as long as the face and as wide as the wear, less the wedge at the back", () => {
    // Face of 30 mm square to the way it moves, back falling off by 1 in 10: the strip's outer end is a line of that slope.
    const text = `thickness 10 mm\ndensity 7850 kg/m^3\noutline { from (100 mm, 0 mm) line (70 mm, 0 mm) line (70 mm, 20 mm) line (-70 mm, 20 mm) line (-70 mm, -10 mm) line (99 mm, -10 mm) close }\nbore 12 mm\nspin 3000 rpm ccw`;
    const outer = outerOf(analyse(readSource(text)));
    for (const by of [0.5, 2, 5]) {
      const ground = groundFaces(outer, by, tipsOf(outer), "ccw");
      if (!ground) throw new Error("not ground");
      expectClosed(ground);
      // Trapezium: 30 mm at the old face, 30 − by/10 at the new one.
      expectClose(areaOf(outer) - areaOf(ground), by * (30 - by / 20), 1e-9);
      expectClose(tipsOf(ground)[0]?.x ?? 0, 100 - by / 10, 1e-9);
      expectClose(tipsOf(ground)[0]?.y ?? 0, -by, 1e-9);
    }
  });

  it("is the mirror image where the bar turns the other way", () => {
    const ccw = sample("brass-limpet-one-tooth");
    // The same bar turned over: every y the other way round, spun clockwise.
    const outer = outerOf(ccw);
    const ground = groundFaces(outer, 1, tipsOf(outer), "ccw");
    const flipped: Loop = {
      ...outer,
      segments: outer.segments
        .map((segment) => {
          const turn = ({ x, y }: Point) => ({ x, y: -y });
          const ends = { from: turn(segment.to), to: turn(segment.from) };
          if (segment.kind === "line") return { ...segment, ...ends };
          const { startRad, sweepRad } = segment;
          return {
            ...segment,
            ...ends,
            centre: turn(segment.centre),
            startRad: -(startRad + sweepRad),
            sweepRad,
          };
        })
        .reverse(),
    };
    const other = groundFaces(flipped, 1, tipsOf(flipped), "cw");
    if (!ground || !other) throw new Error("not ground");
    expectClose(areaOf(other), areaOf(ground), 1e-12);
    const [a, b] = [ground, other].map((loop) => sectionOf({ outer: loop, inner: [] }).centroidMm);
    expectClose(b?.x ?? 0, a?.x ?? 1, 1e-9, 100);
    expectClose(b?.y ?? 0, -(a?.y ?? 1), 1e-9, 100);
  });

  it("only ever takes metal, leaves the new face that far from the old, and the rest where it was", () => {
    fc.assert(
      fc.property(fc.constantFrom(...NAMES), fc.double({ min: 0.05, max: 3, noNaN: true }), (name, by) => {
        const outer = outerOf(sample(name));
        const ground = groundFaces(outer, by, tipsOf(outer), "ccw");
        if (!ground) throw new Error(name);
        expectClosed(ground);
        expect(areaOf(ground)).toBeLessThan(areaOf(outer));
        for (const segment of ground.segments)
          for (const share of [0.1, 0.5, 0.9]) {
            const point = pointAt(segment, share);
            const away = Math.min(...outer.segments.map((old) => distanceToSegment(old, point)));
            expect(away).toBeLessThanOrEqual(by + 1e-9);
            if (away > 1e-6) expect(isInside(outer, point)).toBe(true);
          }
      }),
      { numRuns: 60, seed: 8 },
    );
  });
});

describe("a wear study", () => {
  it("begins with the bar as drawn, in rising wear, with falling mass, energy and tip radius", () => {
    for (const name of NAMES)
      for (const model of ["tip", "face"] as const) {
        const analysis = sample(name);
        const { rows } = studied(analysis, { model, byMm: [2, 0.5, 1] });
        expect(rows.map(({ byMm }) => byMm)).toEqual([0, 0.5, 1, 2]);
        const bars = rows.map(({ bar }) => bar);
        expectClose(bars[0]?.massKg ?? 0, analysis.assessment.mass?.massKg ?? 1, 1e-12);
        expectClose(
          bars[0]?.biteMm ?? 0,
          analysis.assessment.bite?.at(analysis.assessment.bite.toMPerS).maxMm ?? 1,
          1e-9,
        );
        for (const key of ["massKg", "energyJ", "inertiaKgM2", "tipRadiusMm"] as const) {
          const values = bars.map((bar) => bar?.[key] ?? Number.NaN);
          for (let i = 1; i < values.length; i++) expect(values[i]).toBeLessThan(values[i - 1] ?? 0);
        }
      }
  });

  it("finds where the bar leaves its grade: within just before, beyond just after", () => {
    const analysis = sample("brass-limpet-one-tooth");
    const { leavesBalanceAtMm, wanted } = studied(analysis, { model: "face", byMm: [1] });
    if (leavesBalanceAtMm === null) throw new Error("stays");
    const at = (mm: number) =>
      studied(analysis, { model: "face", byMm: [mm] }).rows[1]?.bar?.eccentricityMm ?? 0;
    expect(at(leavesBalanceAtMm + 1e-6)).toBeGreaterThan(wanted.eccentricityMm);
    expect(at(leavesBalanceAtMm - 2e-3)).toBeLessThanOrEqual(wanted.eccentricityMm);
    expect(studied(sample("pickled-heron-two-tooth"), {}).leavesBalanceAtMm).toBeNull();
  });

  it("tells which requirements fail, and where no sound bar is left", () => {
    const { rows } = studied(sample("brass-limpet-one-tooth"), { model: "face", byMm: [0.01, 1] });
    expect(rows.map(({ bar }) => bar?.failed)).toEqual([[], [], ["Balance"]]);
    const gone = studied(sample("brass-limpet-one-tooth"), { byMm: [1, 120] });
    expect(gone.rows.map(({ bar }) => bar === null)).toEqual([false, false, true]);
  });

  it("refuses files with errors, and a face without a spin", () => {
    const text = textOf("brass-limpet-one-tooth");
    const broken = wearStudy(analyse(readSource(text.replace("thickness 10 mm", "thickness 10"))));
    expect(broken).toMatchObject({ ok: false, reason: "file-has-errors" });
    const still = analyse(readSource(text.replace(/^spin.*$/m, "").replace("require balance <= G16", "")));
    expect(wearStudy(still, { model: "face" })).toMatchObject({ ok: false, reason: "no-spin" });
    expect(wearStudy(still, { model: "tip", byMm: [1] })).toMatchObject({ ok: true });
  });
});
