import { describe, expect, it } from "vitest";
import { drillOf, INCH_DRILLS, METRIC_DRILLS } from "../../../geometry/study/drilling/drill-sizes.ts";
import {
  blindMetal,
  fullDepthForMm,
  pointLengthMm,
  throughMetal,
} from "../../../geometry/study/drilling/drilled-metal.ts";
import { expectClose } from "../../support/close-to.ts";

describe("the metal that a drill takes", () => {
  it("has a point of 0.3 diameters, the machinist's rule for 118° (common practice; exactly 0.3004)", () => {
    for (const diameter of [3, 6.5, 13]) expectClose(pointLengthMm(diameter), 0.3 * diameter, 2e-3);
    // Right triangle of the point: half the diameter over its height is the tangent of 59°.
    expectClose(Math.atan2(5, pointLengthMm(10)) * (180 / Math.PI), 59, 1e-12);
  });

  it("is a handbook cylinder where it goes through: 12 mm in 10 mm plate, 1130.97 mm³", () => {
    expectClose(throughMetal(12, 10).volumeMm3, 1130.973, 1e-6);
  });

  it("is a handbook cone at no full depth and cylinder and cone below", () => {
    // Cone of radius 5 and height 3.00430: V = πr²h/3 = 78.6525.
    expectClose(blindMetal(10, 0).volumeMm3, (Math.PI * 25 * 3.0043031) / 3, 1e-7);
    expectClose(blindMetal(10, 0).centroidDepthMm, 3.0043031 / 4, 1e-7);
    expectClose(blindMetal(10, 8).volumeMm3 - blindMetal(10, 0).volumeMm3, Math.PI * 25 * 8, 1e-12);
  });

  it("agrees with the sum of thin slices in volume, centroid and moment of inertia", () => {
    const [diameter, depth, slices] = [7, 4.3, 200_000];
    const length = depth + pointLengthMm(diameter);
    let [volume, first, inertia] = [0, 0, 0];
    for (let i = 0; i < slices; i++) {
      const z = ((i + 0.5) * length) / slices;
      const radius = z < depth ? diameter / 2 : (diameter / 2) * ((length - z) / (length - depth));
      const area = (Math.PI * radius * radius * length) / slices;
      volume += area;
      first += area * z;
      inertia += (area * radius * radius) / 2;
    }
    const metal = blindMetal(diameter, depth);
    expectClose(metal.volumeMm3, volume, 1e-5);
    expectClose(metal.centroidDepthMm, first / volume, 1e-5);
    expectClose(metal.ownInertiaMm5, inertia, 1e-5);
  });

  it("gives the depth for a volume back", () => {
    expectClose(fullDepthForMm(6, blindMetal(6, 3.7).volumeMm3), 3.7, 1e-12);
    expect(fullDepthForMm(6, blindMetal(6, 0).volumeMm3 / 2)).toBeLessThan(0);
  });
});

describe("the drills", () => {
  it("are whole and half millimetres, every one a size of BS 328 (tenths from 3.0 to 13.9 mm)", () => {
    expect(METRIC_DRILLS).toHaveLength(21);
    for (const { diameterMm } of METRIC_DRILLS)
      expect(Number.isInteger(Math.round(diameterMm * 1e9) / 1e8)).toBe(true);
    expect(METRIC_DRILLS.map(({ text }) => text)).toContain("6.5 mm");
  });

  it("are fractions of an inch in lowest terms, exactly 25.4 mm an inch", () => {
    expect(INCH_DRILLS.map(({ text }) => text)).toEqual([
      "1/8 in",
      "5/32 in",
      "3/16 in",
      "7/32 in",
      "1/4 in",
      "9/32 in",
      "5/16 in",
      "11/32 in",
      "3/8 in",
      "13/32 in",
      "7/16 in",
      "15/32 in",
      "1/2 in",
    ]);
    expect(INCH_DRILLS.find(({ text }) => text === "1/4 in")?.diameterMm).toBe(6.35);
    expect(drillOf(25.4 / 64, true).text).toBe("1/64 in");
    expect(drillOf(25.4 * 0.2, true).text).toBe("0.2 in");
    expect(drillOf(6.5, false).text).toBe("6.5 mm");
  });
});
