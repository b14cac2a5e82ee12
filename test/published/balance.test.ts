/** Balance by ISO 21940-11. */
import { describe, expect, it } from "vitest";
import {
  BALANCE_GRADES,
  balanceGradeMmPerS,
  permissibleGMm,
  standardGradeFor,
} from "../../geometry/figures/balance.ts";
import { massOf } from "../../geometry/figures/mass.ts";
import { sectionOf } from "../../geometry/figures/section.ts";
import { imbalanceForceN } from "../../geometry/figures/spin.ts";
import { expectClose } from "../support/close-to.ts";
import { circle, outlineOf, rectangle } from "../support/loops.ts";
import { expectPrinted } from "../support/printed.ts";

const radPerS = (rpm: number) => (rpm * 2 * Math.PI) / 60;

describe("ISO 21940-11", () => {
  // Table 1. Seen.
  it("has these grades", () => {
    const published = [4000, 1600, 630, 250, 100, 40, 16, 6.3, 2.5, 1, 0.4];
    expect(BALANCE_GRADES.map(({ mmPerS }) => mmPerS).reverse()).toEqual(published);
  });

  // Table 1. Seen.
  it.each([
    [100, "complete piston engines"],
    [40, "car wheels"],
    [40, "drive shafts"],
    [16, "agricultural machinery"],
    [16, "crushers"],
    [6.3, "fans"],
    [6.3, "pumps"],
    [6.3, "general machinery"],
    [2.5, "turbines"],
    [2.5, "machine-tool drives"],
  ])("G%d is for %s", (mmPerS, use) => {
    expect(standardGradeFor(mmPerS)?.usedFor).toContain(use);
  });

  // A tool maker's catalogue: 12 g·mm for 2 kg at 10 000 rpm in G6.3; 12.0317 with its factor 9549. Seen.
  it("allows a tool of 2 kg at 10 000 rpm in G6.3", () => {
    const permissible = permissibleGMm(6.3, 2, radPerS(10_000));
    expectPrinted(permissible, "12");
    expectClose(permissible, 12.0317, 1e-4);
  });

  // The US form, U in oz·in = 6.015·G·W/n with W in lb. Seen.
  it.each([
    [6.3, 2, 10_000],
    [40, 1.6, 4200],
    [2.5, 0.3, 30_000],
  ])("gives G%d, %d kg, %d rpm the same in pounds and ounces", (grade, massKg, rpm) => {
    const [gPerOz, kgPerLb, mmPerIn] = [28.349523125, 0.45359237, 25.4];
    const ounceInches = (6.015 * grade * (massKg / kgPerLb)) / rpm;
    expectClose(permissibleGMm(grade, massKg, radPerS(rpm)), ounceInches * gPerOz * mmPerIn, 1e-4);
  });

  // From memory: the factor of the usual formula, U = 9549·G·m/n.
  it("has the factor 9549", () => {
    expectPrinted(permissibleGMm(1, 1, radPerS(1)), "9549");
    expectClose(permissibleGMm(1, 1, radPerS(1)), 60_000 / (2 * Math.PI), 1e-15);
  });
});

// Worked out from the formulas above, for the plate of the mass checks.
describe("a plate of 400 × 60 × 12 mm with a hole of 20 mm at x = 50 mm, at 3000 rpm", () => {
  const section = sectionOf(outlineOf(rectangle(-200, -30, 200, 30), circle(10, [50, 0])));
  const { massKg = 0, eccentricityMm = 0, imbalanceGMm = 0 } = massOf(section, 12, 7850) ?? {};

  it("has this balance grade", () => {
    expectPrinted(balanceGradeMmPerS(eccentricityMm, radPerS(3000)), "208.34");
  });

  it("would be allowed this imbalance in G6.3", () => {
    expectPrinted(permissibleGMm(6.3, massKg, radPerS(3000)), "44.74");
  });

  it("pulls with its imbalance times the square of its spin", () => {
    expectClose(imbalanceForceN(imbalanceGMm, radPerS(3000)), 1.47969e-3 * (100 * Math.PI) ** 2, 1e-6);
  });
});
