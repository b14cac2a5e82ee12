import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  BALANCE_GRADES,
  balanceGradeMmPerS,
  gradeName,
  massToRemoveG,
  permissibleGMm,
  standardGradeFor,
} from "../../geometry/figures/balance.ts";
import { massOf } from "../../geometry/figures/mass.ts";
import { sectionOf } from "../../geometry/figures/section.ts";
import { expectClose } from "../support/close-to.ts";
import { circle, outlineOf } from "../support/loops.ts";

const positive = (max: number) => fc.double({ min: 1e-6, max, noNaN: true });

describe("balance grade and permissible imbalance", () => {
  it("are one relation: at the grade a bar has, its own imbalance is permissible", () => {
    fc.assert(
      fc.property(positive(50), positive(100), positive(5000), (eccentricityMm, massKg, radPerS) => {
        const grade = balanceGradeMmPerS(eccentricityMm, radPerS);
        expectClose(permissibleGMm(grade, massKg, radPerS), 1000 * massKg * eccentricityMm, 1e-14);
      }),
      { seed: 20 },
    );
  });

  it("allow a faster bar less, in proportion", () => {
    expectClose(permissibleGMm(6.3, 2, 900), permissibleGMm(6.3, 2, 300) / 3, 1e-15);
  });
});

describe("the grades of the standard", () => {
  it("are named by their value, smoothest first, each two and a half times the one before", () => {
    for (const [i, { mmPerS, name }] of BALANCE_GRADES.entries()) {
      expect(gradeName(mmPerS)).toBe(name);
      const next = BALANCE_GRADES[i + 1];
      if (next) expectClose(next.mmPerS / mmPerS, 2.5, 0.03);
    }
  });

  it.each([
    [0, "G0.4"],
    [0.4, "G0.4"],
    [6.300001, "G16"],
    [6.3 * (1 + 1e-14), "G6.3"],
    [208.34, "G250"],
    [4000, "G4000"],
    [4001, undefined],
  ])("a bar of %d mm/s fits %s", (mmPerS, name) => {
    expect(standardGradeFor(mmPerS)?.name).toBe(name);
  });
});

describe("grade names", () => {
  it.each([
    [208.3412, "G208.3"],
    [40, "G40"],
    [0.123456, "G0.1235"],
    [0, "G0"],
  ])("%d mm/s is %s", (mmPerS, name) => {
    expect(gradeName(mmPerS)).toBe(name);
  });
});

describe("metal to take off", () => {
  it("balances the bar when it is drilled out of the heavy side", () => {
    const [thicknessMm, density] = [10, 7850];
    const bar = circle(70, [0.4, 0.3]);
    const mass = massOf(sectionOf(outlineOf(bar)), thicknessMm, density);
    const grams = massToRemoveG(mass?.imbalanceGMm ?? 0, 50);
    const holeRadiusMm = Math.sqrt(grams / (Math.PI * thicknessMm * density * 1e-6));
    const heavyRad = ((mass?.imbalanceDeg ?? 0) * Math.PI) / 180;
    const hole = circle(holeRadiusMm, [50 * Math.cos(heavyRad), 50 * Math.sin(heavyRad)]);
    const drilled = massOf(sectionOf(outlineOf(bar, hole)), thicknessMm, density);
    expect(drilled?.imbalanceDeg).toBeNull();
    expectClose(drilled?.imbalanceGMm, 0, 1e-12, mass?.imbalanceGMm);
  });
});
