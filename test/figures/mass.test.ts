import { describe, expect, it } from "vitest";
import { massOf } from "../../geometry/figures/mass.ts";
import { sectionOf } from "../../geometry/figures/section.ts";
import type { Outline } from "../../geometry/outline/segment.ts";
import { expectClose } from "../support/close-to.ts";
import { annulus, circle, loopOf, outlineOf, type Pair, rectangle } from "../support/loops.ts";

const STEEL = 7850;
const steelPlate = (outline: Outline, thicknessMm = 12) => massOf(sectionOf(outline), thicknessMm, STEEL);

describe("mass properties", () => {
  it("of a ring are those of the handbook's hollow cylinder", () => {
    const mass = steelPlate(annulus(60, 25), 10);
    const massKg = Math.PI * (0.06 ** 2 - 0.025 ** 2) * 0.01 * STEEL;
    expectClose(mass?.massKg, massKg, 1e-12);
    expectClose(mass?.inertiaKgM2, (massKg * (0.06 ** 2 + 0.025 ** 2)) / 2, 1e-12);
  });

  it("grow with thickness and density", () => {
    const section = sectionOf(outlineOf(rectangle(-100, -20, 110, 20)));
    const [one, other] = [massOf(section, 10, 2700), massOf(section, 30, 5400)];
    expectClose(other?.massKg, 6 * (one?.massKg ?? 0), 1e-14);
    expectClose(other?.inertiaKgM2, 6 * (one?.inertiaKgM2 ?? 0), 1e-14);
    expectClose(other?.imbalanceGMm, 6 * (one?.imbalanceGMm ?? 0), 1e-14);
    expect(other?.eccentricityMm).toBe(one?.eccentricityMm);
  });

  it("do not exist without area", () => {
    expect(steelPlate(outlineOf(loopOf([])))).toBeNull();
    expect(steelPlate(outlineOf(circle(20), circle(20)))).toBeNull();
  });
});

describe("the heavy side", () => {
  it.each<[string, Pair, number]>([
    ["east", [3, 0], 0],
    ["north-east", [3, 3], 45],
    ["north", [0, 3], 90],
    ["west", [-3, 0], 180],
    ["south", [0, -3], 270],
    ["a hair south of east", [3, -1e-3], 360 - (Math.atan(1e-3 / 3) * 180) / Math.PI],
  ])("of a disc set off to the %s lies there", (_, centre, angleDeg) => {
    const mass = steelPlate(outlineOf(circle(40, centre)));
    expectClose(mass?.imbalanceDeg ?? undefined, angleDeg, 1e-12, 360);
    expectClose(mass?.eccentricityMm, Math.hypot(...centre), 1e-12);
  });

  it("lies away from a hole", () => {
    const mass = steelPlate(outlineOf(circle(80), circle(5, [0, 60])));
    expectClose(mass?.imbalanceDeg ?? undefined, 270, 1e-12);
  });

  it("is always under 360", () => {
    const mass = steelPlate(outlineOf(circle(40, [3, -1e-17])));
    expect(mass?.imbalanceDeg).toBe(0);
  });

  it("does not exist for a balanced bar, though rounding leaves an eccentricity", () => {
    const ring = [0, 1, 2].map((k) => {
      const angle = (2 * Math.PI * k) / 3;
      return circle(6.5, [40.1 * Math.cos(angle), 40.1 * Math.sin(angle)]);
    });
    const mass = steelPlate(outlineOf(circle(90), circle(11), ...ring));
    expect(mass?.imbalanceDeg).toBeNull();
    expect(mass?.eccentricityMm).toBeLessThan(1e-13);
  });

  it("exists for a micrometre", () => {
    const mass = steelPlate(outlineOf(circle(90, [0, 1e-3])));
    expectClose(mass?.imbalanceDeg ?? undefined, 90, 1e-9);
  });
});
