import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Analysis, analyse } from "../../../geometry/analysis/analyse.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import { momentsOf } from "../../../geometry/study/tolerance/covariance.ts";
import { cutClass1, cutWithin } from "../../../geometry/study/tolerance/cut-tolerance.ts";
import { SPREADS } from "../../../geometry/study/tolerance/deviation.ts";
import { distributionOf, histogramOf, shareOf } from "../../../geometry/study/tolerance/distribution.ts";
import { balanceModel } from "../../../geometry/study/tolerance/model.ts";
import {
  type PlateTolerance,
  plateTolerance,
  wedgeAcross,
} from "../../../geometry/study/tolerance/plate-tolerance.ts";
import { sampleParts } from "../../../geometry/study/tolerance/sample-parts.ts";
import { stockNeededMm, stockReach } from "../../../geometry/study/tolerance/stock.ts";
import {
  type ToleranceRequest,
  type ToleranceStudy,
  toleranceStudy,
} from "../../../geometry/study/tolerance/tolerance.ts";
import { expectClose } from "../../support/close-to.ts";

const SAMPLE_TEXT = readFileSync(
  join(import.meta.dirname, "../../../samples/brass-limpet-one-tooth.bar"),
  "utf8",
);
const sample = analyse(readSource(SAMPLE_TEXT));

/** 200 × 40 × 10 mm of 7850 kg/m³: 628 g, 0.0785 g/mm² of plate. */
const plain = (more = "") =>
  analyse(
    readSource(
      `thickness 10 mm\ndensity 7850 kg/m^3\noutline { from (-100 mm, -20 mm) line (100 mm, -20 mm) line (100 mm, 20 mm) line (-100 mm, 20 mm) close }\n${more}`,
    ),
  );
const G_PER_MM2 = 0.0785;

const EXACT_PLATE: PlateTolerance = { lowerMm: 0, upperMm: 0, withinPlateMm: 0, text: "exact" };

function studied(analysis: Analysis, request: ToleranceRequest = {}): ToleranceStudy {
  const result = toleranceStudy(analysis, request);
  if (!result.ok) throw new Error(result.message);
  return result.study;
}

function modelOf(analysis: Analysis, limitMm: number, edges: "each" | "together" = "each") {
  const { outline, assessment, design } = analysis;
  if (!outline || !assessment.section) throw new Error("no outline");
  const model = balanceModel({
    outline,
    section: assessment.section,
    thicknessMm: design.thicknessMm?.value ?? 0,
    gPerMm3: (design.densityKgPerM3 ?? 0) * 1e-6,
    cut: cutWithin(limitMm),
    edges,
  });
  if (!model) throw new Error("no model");
  return model;
}

describe("published limits", () => {
  it("of plate are those of EN 10029:1991, Table 1", () => {
    expect(plateTolerance(12, "A")).toMatchObject({ lowerMm: -0.5, upperMm: 1.2, withinPlateMm: 0.9 });
    expect(plateTolerance(8, "B")).toMatchObject({ lowerMm: -0.3, upperMm: 1.4 });
    expect(plateTolerance(15, "C")).toMatchObject({ lowerMm: 0, upperMm: 1.9 });
    expect(plateTolerance(25, "D")).toMatchObject({ lowerMm: -1.1, upperMm: 1.1 });
    expect(plateTolerance(5, "D")).toMatchObject({ lowerMm: -0.75, upperMm: 0.75 });
    expect(plateTolerance(2.9, "A")).toBeNull();
    expect(plateTolerance(80, "A")).toBeNull();
  });

  it("of cuts are those of ISO 9013, tolerance class 1", () => {
    const at = (thickness: number, nominal: number) => cutClass1(thickness)?.limitMm(nominal) ?? null;
    expect([at(10, 5), at(10, 20), at(10, 100), at(10, 200), at(10, 500)]).toEqual([
      0.25, 0.3, 0.3, 0.35, 0.45,
    ]);
    expect([at(12, 3), at(12, 10), at(12, 35), at(12, 125), at(12, 315)]).toEqual([
      0.3, 0.35, 0.4, 0.45, 0.55,
    ]);
    expect([at(25.4, 100), at(20, 100), at(22, 9)]).toEqual([0.7, 0.45, 0.45]);
    // Below the table its finest column, beyond it nothing.
    expect(at(10, 1)).toBe(0.25);
    expect(at(10, 2500)).toBeNull();
    expect(cutClass1(60)).toBeNull();
  });

  it("run a plate's difference across a bar by the share of 600 mm, no more than all of it", () => {
    const plate = plateTolerance(12, "A");
    if (!plate) throw new Error("no row");
    expectClose(wedgeAcross(200, plate), 0.3, 1e-12);
    expect(wedgeAcross(900, plate)).toBe(0.9);
  });
});

describe("the linear model", () => {
  it("shifts one edge of a rectangle: 40 mm × δ at 100 mm, and the built shape agrees to first order", () => {
    const model = modelOf(plain(), 0.2);
    const right = model.influences.find(({ momentGMm }) => momentGMm.x > 1);
    expectClose(right?.momentGMm.x, G_PER_MM2 * 40 * 0.1 * 100, 1e-12);
    expectClose(right?.massG, G_PER_MM2 * 40 * 0.1, 1e-12);
    const longer = plain().source.text.replace(
      "line (100 mm, -20 mm) line (100 mm, 20 mm)",
      "line (100.1 mm, -20 mm) line (100.1 mm, 20 mm)",
    );
    const { section } = analyse(readSource(longer)).assessment;
    const moved = (section?.centroidMm?.x ?? 0) * (section?.areaMm2 ?? 0) * G_PER_MM2;
    // Exactly 40·0.1·100.05: the first-order term and δ²/2.
    expectClose(moved, G_PER_MM2 * 40 * 0.1 * 100.05, 1e-9);
    expectClose(right?.momentGMm.x, moved, 6e-4);
  });

  it("moves the axis with the bore and a hole with its metal", () => {
    const model = modelOf(plain("bore 20 mm\nhole (60 mm, 0 mm) diameter 12 mm"), 0.3);
    const of = (cause: string) => model.influences.filter((influence) => influence.cause === cause);
    // The plate without the bolt hole, 628 g less 8.878 g, moved by 0.15 mm; the bore's own void goes with the axis.
    expectClose(of("bore")[0]?.momentGMm.x, -(628 - G_PER_MM2 * Math.PI * 36) * 0.15, 1e-9);
    expectClose(of("holes")[0]?.momentGMm.x, -G_PER_MM2 * Math.PI * 36 * 0.15, 1e-9);
    expect(of("bore")).toHaveLength(2);
  });

  it("knows a wedge by the second moments: I_yy = bh³/12 of a rectangle", () => {
    const { wedge } = modelOf(plain(), 0);
    // 7850e-6 g/mm³ · 40·200³/12 mm⁴ = 209 333 g·mm for a slope of 1 mm per mm along x.
    expectClose(wedge.alongX.x, (7850e-6 * 40 * 200 ** 3) / 12, 1e-12);
    expectClose(wedge.alongY.y, (7850e-6 * 200 * 40 ** 3) / 12, 1e-12);
    expect(Math.abs(wedge.alongX.y)).toBeLessThan(1e-6);
  });

  it("has the variance of a sum of uniforms: (limit)²/3 for each edge", () => {
    const thickness = { meanShare: 1, halfRangeShare: 0, slopeLimit: 0 };
    const { xx, yy, xy } = momentsOf(modelOf(plain(), 0.2), thickness, "uniform");
    // Two ends of 40 mm at ±100 mm, two sides of 200 mm at ±20 mm, each ±0.1 mm.
    expectClose(xx, (2 * (G_PER_MM2 * 40 * 100 * 0.1) ** 2) / 3, 1e-12);
    expectClose(yy, (2 * (G_PER_MM2 * 200 * 20 * 0.1) ** 2) / 3, 1e-12);
    expect(Math.abs(xy)).toBeLessThan(1e-9);
    // All alike, they cancel on a symmetrical bar.
    const alike = momentsOf(modelOf(plain(), 0.2, "together"), thickness, "uniform");
    expect(alike.xx + alike.yy).toBeLessThan(1e-18);
  });

  it.each(SPREADS)("has the mean and covariance that a sample of the %s kind has", (spread) => {
    const model = modelOf(sample, 0.3);
    const thickness = { meanShare: 1.04, halfRangeShare: 0.08, slopeLimit: 0.001 };
    const parts = sampleParts(model, thickness, { spread, parts: 60_000, seed: 11 });
    const expected = momentsOf(model, thickness, spread);
    const mean = (of: (x: number, y: number) => number) =>
      parts.reduce((sum, { momentGMm: { x, y } }) => sum + of(x, y), 0) / parts.length;
    const [mx, my] = [mean((x) => x), mean((_, y) => y)];
    const sigma = Math.sqrt((expected.xx + expected.yy) / parts.length);
    expect(Math.hypot(mx - expected.mean.x, my - expected.mean.y)).toBeLessThan(4 * sigma);
    const scale = expected.xx + expected.yy;
    expectClose(
      mean((x) => (x - mx) ** 2),
      expected.xx,
      0.02,
      scale,
    );
    expectClose(
      mean((_, y) => (y - my) ** 2),
      expected.yy,
      0.02,
      scale,
    );
    expectClose(
      mean((x, y) => (x - mx) * (y - my)),
      expected.xy,
      0.02,
      scale,
    );
  });
});

describe("a study", () => {
  it("leaves the bar as drawn where nothing may be off", () => {
    const study = studied(sample, { plate: EXACT_PLATE, cut: cutWithin(0), wedgeMm: 0, parts: 100 });
    const { imbalanceGMm, balance } = {
      imbalanceGMm: sample.assessment.mass?.imbalanceGMm ?? 0,
      balance: study.imbalanceGMm,
    };
    for (const value of [balance.mean, balance.p50, balance.p99]) expectClose(value, imbalanceGMm, 1e-9);
    expect(study.within.share).toBe(1);
    expect(study.takeOffG.p95).toBe(0);
    expect(study.stockMm.p95).toBe(0);
  });

  it("is the same for the same seed, to the byte, and another for another", () => {
    const told = (seed: number) => JSON.stringify(studied(sample, { seed, parts: 500 }));
    expect(told(7)).toBe(told(7));
    expect(told(8)).not.toBe(told(7));
  });

  it("has more parts within a coarser grade, and fewer where more may be off", () => {
    const shareAt = (gradeMmPerS: number, limit = 0.3) =>
      studied(sample, { gradeMmPerS, cut: cutWithin(limit), parts: 1500 }).within.share;
    const shares = [6.3, 16, 40, 100, 250, 630].map((grade) => shareAt(grade));
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(shares.at(-1)).toBeGreaterThan(0.99);
    expect(shareAt(100, 0.05)).toBeGreaterThan(shareAt(100, 0.6) + 0.05);
    const { byGrade } = studied(sample, { parts: 1000 });
    const rising = byGrade.map(({ share }) => share);
    expect([...rising].sort((a, b) => a - b)).toEqual(rising);
    expect(byGrade.length).toBeGreaterThan(2);
  });

  it("bounds its sample", () => {
    expect(studied(sample, { parts: 1 }).given.parts).toBe(100);
    expect(studied(plain("bore 20 mm"), { parts: 1e9, wedgeMm: 0, plate: EXACT_PLATE }).given.parts).toBe(
      100_000,
    );
  });

  it("says what it lacks", () => {
    const reason = (analysis: Analysis, request: ToleranceRequest = {}) => {
      const result = toleranceStudy(analysis, request);
      return result.ok ? null : result.reason;
    };
    const changed = (from: string, to: string) => analyse(readSource(SAMPLE_TEXT.replace(from, to)));
    expect(reason(changed("thickness 10 mm", "thickness 2 mm"))).toBe("no-plate-limit");
    expect(reason(changed("thickness 10 mm", "thickness 60 mm"))).toBe("no-cut-limit");
    expect(reason(changed("thickness 10 mm", "thickness 10"))).toBe("file-has-errors");
    expect(reason(plain("bore 20 mm"), { gradeMmPerS: 16 })).toBe("no-spin");
  });
});

describe("stock on a blank", () => {
  it("reaches 2R² a millimetre round a disc, whatever the direction", () => {
    const disc = analyse(
      readSource(
        "thickness 10 mm\ndensity 7850 kg/m^3\noutline { from (90 mm, 0 mm) arc (-90 mm, 0 mm) about (0 mm, 0 mm) turning left arc (90 mm, 0 mm) about (0 mm, 0 mm) turning left }\nbore 20 mm",
      ),
    );
    if (!disc.outline) throw new Error("no disc");
    const reach = stockReach(disc.outline.outer, G_PER_MM2);
    for (const { gMmPerMm } of reach.supports) expectClose(gMmPerMm, G_PER_MM2 * 2 * 90 ** 2, 1e-9);
    expectClose(stockNeededMm(reach, { x: 300, y: -400 }, 50), (500 - 50) / (G_PER_MM2 * 2 * 90 ** 2), 1e-4);
    expect(stockNeededMm(reach, { x: 30, y: 40 }, 50)).toBe(0);
  });

  it("is enough and not too much: what may be left along the edges makes up the lack, and no less would", () => {
    const { outline } = sample;
    if (!outline) throw new Error("no outline");
    const reach = stockReach(outline.outer, G_PER_MM2);
    const angle = fc.double({ min: 0, max: 6.283, noNaN: true });
    fc.assert(
      fc.property(angle, fc.double({ min: 20, max: 900, noNaN: true }), (rad, size) => {
        const moment = { x: size * Math.cos(rad), y: size * Math.sin(rad) };
        const allowed = 12;
        const stock = stockNeededMm(reach, moment, allowed);
        // Bits of the edge, each with 0 to `stock` left on it: nearest to what is lacking by descent on the square.
        const bits = outline.outer.segments.flatMap((segment) => {
          const n = 8;
          return Array.from({ length: n }, (_, i) => {
            const [a, b] = segment.kind === "line" ? [segment.from, segment.to] : [null, null];
            const share = (i + 0.5) / n;
            if (a && b) {
              const length = Math.hypot(b.x - a.x, b.y - a.y) / n;
              return { x: (a.x + (b.x - a.x) * share) * length, y: (a.y + (b.y - a.y) * share) * length };
            }
            if (segment.kind !== "arc") return { x: 0, y: 0 };
            const at = segment.startRad + share * segment.sweepRad;
            const length = (segment.radiusMm * Math.abs(segment.sweepRad)) / n;
            return {
              x: (segment.centre.x + segment.radiusMm * Math.cos(at)) * length,
              y: (segment.centre.y + segment.radiusMm * Math.sin(at)) * length,
            };
          });
        });
        const nearest = (most: number): number => {
          const kept = bits.map(() => 0);
          let { x, y } = moment;
          for (let round = 0; round < 300; round++)
            bits.forEach((bit, i) => {
              const [bx, by] = [bit.x * G_PER_MM2, bit.y * G_PER_MM2];
              const square = bx * bx + by * by;
              if (square === 0) return;
              const before = kept[i] ?? 0;
              const after = Math.min(most, Math.max(0, before - (x * bx + y * by) / square));
              kept[i] = after;
              x += (after - before) * bx;
              y += (after - before) * by;
            });
          return Math.hypot(x, y);
        };
        if (stock === 0) return expect(size).toBeLessThanOrEqual(allowed * 1.001);
        expect(nearest(stock * 1.02)).toBeLessThanOrEqual(allowed * 1.01);
        expect(nearest(stock * 0.97)).toBeGreaterThan(allowed);
      }),
      { numRuns: 25, seed: 4 },
    );
  });
});

describe("what a sample says", () => {
  it("by nearest rank: of 1 to 100 the half is 50, 95 % is 95", () => {
    const values = Array.from({ length: 100 }, (_, i) => 100 - i);
    expect(distributionOf(values)).toEqual({ mean: 50.5, p50: 50, p90: 90, p95: 95, p99: 99 });
  });

  it("with Wilson's interval (from memory: 0 of 10 gives 0 to 27.8 %, 10 of 20 gives 29.9 to 70.1 %)", () => {
    const none = shareOf(0, 10);
    expect([none.from, none.to].map((value) => Number(value.toFixed(3)))).toEqual([0, 0.278]);
    const half = shareOf(10, 20);
    expect([half.from, half.to].map((value) => Number(value.toFixed(3)))).toEqual([0.299, 0.701]);
  });

  it("in bins that hold all of it", () => {
    const bins = histogramOf(Array.from({ length: 1000 }, (_, i) => i / 10));
    expect(bins.reduce((sum, { count }) => sum + count, 0)).toBe(1000);
    for (const [i, { from }] of bins.slice(1).entries()) expectClose(from, bins[i]?.to ?? -1, 1e-12, 100);
    expect(histogramOf([0, 0])).toEqual([{ from: 0, to: 0, count: 2 }]);
  });
});
