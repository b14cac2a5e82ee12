/** Mass properties. Formulas seen in handbooks, the numbers worked out from them. */
import { describe, it } from "vitest";
import { type MassProperties, massOf } from "../../geometry/figures/mass.ts";
import { type Section, sectionOf } from "../../geometry/figures/section.ts";
import { angularMomentumKgM2PerS, energyJ, tipSpeedMPerS } from "../../geometry/figures/spin.ts";
import { expectClose } from "../support/close-to.ts";
import { circle, outlineOf, rectangle } from "../support/loops.ts";
import { expectPrinted } from "../support/printed.ts";

const steelPlate = (section: Section): Partial<MassProperties> => massOf(section, 12, 7850) ?? {};

describe("a steel plate of 400 × 60 × 12 mm", () => {
  const plate = rectangle(-200, -30, 200, 30);

  it("whole", () => {
    const { massKg, inertiaKgM2 } = steelPlate(sectionOf(outlineOf(plate)));
    expectPrinted(massKg, "2.2608");
    expectPrinted(inertiaKgM2, "0.03082224");
    expectClose(inertiaKgM2, (2.2608 * (0.4 ** 2 + 0.06 ** 2)) / 12, 1e-12);
  });

  it("less a hole of 20 mm in its middle", () => {
    const { massKg, inertiaKgM2 } = steelPlate(sectionOf(outlineOf(plate, circle(10))));
    expectPrinted(massKg, "2.2312062");
    expectPrinted(inertiaKgM2, "0.03082076");
  });

  it("less that hole at x = 50 mm", () => {
    const section = sectionOf(outlineOf(plate, circle(10, [50, 0])));
    const { massKg = 0, inertiaKgM2 = 0, imbalanceGMm, imbalanceDeg, eccentricityMm } = steelPlate(section);
    expectPrinted(section.centroidMm?.x, "-0.6631795");
    expectPrinted(imbalanceGMm, "1479.690");
    expectPrinted(inertiaKgM2, "0.03074678");
    expectPrinted(inertiaKgM2 - massKg * ((eccentricityMm ?? 0) / 1000) ** 2, "0.03074579");
    expectClose(imbalanceDeg ?? undefined, 180, 1e-12);
  });
});

describe("spinning", () => {
  // Common practice, no source: a bar of 340 mm at about 2800 rpm has about 50 m/s at its tips.
  it("a bar of 340 mm at 2800 rpm", () => {
    const { maxRadiusMm } = sectionOf(outlineOf(rectangle(-170, -1, 170, 1)));
    expectClose(tipSpeedMPerS(maxRadiusMm, (2800 * 2 * Math.PI) / 60), 50, 0.01);
  });

  // From memory: a solid disc has I = ½mr², so ½Iω² = ¼m·v² with v the speed of its rim, and L = ½m·r·v.
  it("a solid disc, by the speed of its rim", () => {
    const section = sectionOf(outlineOf(circle(200)));
    const { massKg = 0, inertiaKgM2 = 0 } = steelPlate(section);
    const rimMPerS = tipSpeedMPerS(section.maxRadiusMm, 500);
    expectClose(rimMPerS, 100, 1e-12);
    expectClose(energyJ(inertiaKgM2, 500), (massKg * rimMPerS ** 2) / 4, 1e-12);
    expectClose(angularMomentumKgM2PerS(inertiaKgM2, 500), (massKg * 0.2 * rimMPerS) / 2, 1e-12);
  });
});
