import { describe, it } from "vitest";
import { balanceGradeMmPerS, permissibleGMm } from "../../geometry/figures/balance.ts";
import { massOf } from "../../geometry/figures/mass.ts";
import { sectionOf } from "../../geometry/figures/section.ts";
import {
  angularMomentumKgM2PerS,
  energyJ,
  imbalanceForceN,
  tipSpeedMPerS,
} from "../../geometry/figures/spin.ts";
import { expectClose } from "../support/close-to.ts";
import { circle, outlineOf, rectangle } from "../support/loops.ts";

const RAD_PER_S = 400;
const section = sectionOf(outlineOf(rectangle(-200, -30, 200, 30), circle(10, [50, 0])));
const mass = massOf(section, 12, 7850);

describe("a spinning bar", () => {
  it("moves its farthest corner at the tip speed", () => {
    expectClose(tipSpeedMPerS(section.maxRadiusMm, RAD_PER_S), Math.hypot(0.2, 0.03) * RAD_PER_S, 1e-14);
  });

  it("has the energy of its angular momentum: E = L·ω/2 = L²/2I", () => {
    const inertia = mass?.inertiaKgM2 ?? 0;
    const momentum = angularMomentumKgM2PerS(inertia, RAD_PER_S);
    expectClose(energyJ(inertia, RAD_PER_S), (momentum * RAD_PER_S) / 2, 1e-14);
    expectClose(energyJ(inertia, RAD_PER_S), momentum ** 2 / (2 * inertia), 1e-14);
  });

  it("pulls at its axle with mass × eccentricity × ω²", () => {
    const { massKg = 0, eccentricityMm = 0, imbalanceGMm = 0 } = mass ?? {};
    const centripetalN = massKg * (eccentricityMm / 1000) * RAD_PER_S ** 2;
    expectClose(imbalanceForceN(imbalanceGMm, RAD_PER_S), centripetalN, 1e-14);
  });

  it("pulls with mass × grade × ω, the grade being e·ω", () => {
    const { massKg = 0, eccentricityMm = 0 } = mass ?? {};
    const grade = balanceGradeMmPerS(eccentricityMm, RAD_PER_S);
    const permissible = permissibleGMm(grade, massKg, RAD_PER_S);
    expectClose(imbalanceForceN(permissible, RAD_PER_S), massKg * (grade / 1000) * RAD_PER_S, 1e-14);
  });
});
