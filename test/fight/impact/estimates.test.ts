import { describe, expect, it } from "vitest";
import {
  axleBendingMPa,
  boltForceN,
  boxInertiaKgM2,
  meanForceN,
  riseM,
} from "../../../geometry/fight/impact/estimates.ts";
import { expectClose } from "../../support/close-to.ts";

describe("estimates around a blow", () => {
  // Standard gravity 9.80665 m/s² by definition (CGPM 1901).
  it("a body thrown up at 9.80665 m/s rises for a second and 4.903325 m", () => {
    expectClose(riseM(9.80665), 4.903325, 1e-15);
    expect(riseM(-3)).toBe(0);
  });

  // A box as in any table of moments of inertia; a thin rod is one without height.
  it("a box turns like a thin rod if it has no height, and the same lying or standing", () => {
    expectClose(boxInertiaKgM2(3, 0.4, 0), (3 * 0.4 ** 2) / 12, 1e-15);
    expect(boxInertiaKgM2(3, 0.4, 0.1)).toBe(boxInertiaKgM2(3, 0.1, 0.4));
  });

  it("a blow of 20 N·s that lasts 0.5 ms has a mean force of 40 kN, 10 kN on each of four bolts", () => {
    expectClose(meanForceN(20, 0.5e-3), 40_000, 1e-15);
    expectClose(boltForceN(40_000, 4), 10_000, 1e-15);
  });

  // Hibbeler's and every handbook's beams: F·L/4 in the middle of two supports, F·L at a free end; W = π·d³/32.
  it("bends an axle held on both sides a quarter as much as one held on one side", () => {
    const axle = { diameterM: 0.02, lengthM: 0.08 } as const;
    const moment = 1000 * 0.08;
    expectClose(
      axleBendingMPa(1000, { ...axle, held: "one side" }),
      moment / ((Math.PI * 0.02 ** 3) / 32) / 1e6,
      1e-14,
    );
    expectClose(
      axleBendingMPa(1000, { ...axle, held: "both sides" }) * 4,
      axleBendingMPa(1000, { ...axle, held: "one side" }),
      1e-14,
    );
  });
});
