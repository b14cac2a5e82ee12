import fc from "fast-check";
import { describe, it } from "vitest";
import { massOf } from "../../geometry/figures/mass.ts";
import { type Section, sectionOf } from "../../geometry/figures/section.ts";
import type { Outline } from "../../geometry/outline/segment.ts";
import { reflection, shift, turn } from "../../geometry/outline/transform.ts";
import { expectClose } from "../support/close-to.ts";
import { outlineOf } from "../support/loops.ts";
import { movedOutline, soundOutline } from "../support/random-outlines.ts";

const ROUNDING = 1e-12;
const coordinate = fc.double({ min: -200, max: 200, noNaN: true });
const massProperties = (outline: Outline) => massOf(sectionOf(outline), 12, 7850);

/** Largest second moment that the section's area could have about the axis: the scale of its sums. */
function scaleOf({ areaMm2, maxRadiusMm }: Section): number {
  return areaMm2 * maxRadiusMm ** 2;
}

describe("turning about the axis", () => {
  it("keeps mass, inertia, eccentricity and cut length", () => {
    fc.assert(
      fc.property(soundOutline, fc.double({ min: -7, max: 7, noNaN: true }), (outline, angleRad) => {
        const turned = movedOutline(outline, turn(angleRad));
        const [before, after] = [massProperties(outline), massProperties(turned)];
        expectClose(after?.massKg, before?.massKg ?? 0, ROUNDING);
        expectClose(after?.inertiaKgM2, before?.inertiaKgM2 ?? 0, ROUNDING);
        expectClose(
          after?.eccentricityMm,
          before?.eccentricityMm ?? 0,
          ROUNDING,
          sectionOf(outline).maxRadiusMm,
        );
        expectClose(sectionOf(turned).perimeterMm, sectionOf(outline).perimeterMm, ROUNDING);
      }),
      { seed: 1 },
    );
  });

  it("turns the heavy side along", () => {
    fc.assert(
      fc.property(soundOutline, fc.double({ min: -3, max: 3, noNaN: true }), (outline, angleRad) => {
        const before = massProperties(outline);
        const after = massProperties(movedOutline(outline, turn(angleRad)));
        fc.pre(before !== null && before.eccentricityMm > 0.1);
        const turnedRad =
          (((after?.imbalanceDeg ?? 0) - (before?.imbalanceDeg ?? 0)) * Math.PI) / 180 - angleRad;
        expectClose(Math.sin(turnedRad / 2), 0, 1e-9, 1);
      }),
      { seed: 2 },
    );
  });
});

describe("mirroring", () => {
  it("negates the product of inertia and keeps the rest", () => {
    fc.assert(
      fc.property(soundOutline, fc.constantFrom("x" as const, "y" as const), (outline, axis) => {
        const [before, after] = [sectionOf(outline), sectionOf(movedOutline(outline, reflection(axis)))];
        const scale = scaleOf(before);
        expectClose(after.areaMm2, before.areaMm2, ROUNDING);
        expectClose(after.secondMomentsMm4.xy, -before.secondMomentsMm4.xy, ROUNDING, scale);
        expectClose(after.secondMomentsMm4.xx, before.secondMomentsMm4.xx, ROUNDING);
        expectClose(after.secondMomentsMm4.yy, before.secondMomentsMm4.yy, ROUNDING);
        expectClose(after.maxRadiusMm, before.maxRadiusMm, ROUNDING);
      }),
      { seed: 3 },
    );
  });
});

describe("shifting", () => {
  it("follows the parallel-axis theorem", () => {
    fc.assert(
      fc.property(soundOutline, coordinate, coordinate, (outline, dx, dy) => {
        const [before, after] = [
          sectionOf(outline),
          sectionOf(movedOutline(outline, shift({ x: dx, y: dy }))),
        ];
        const { x = 0, y = 0 } = before.centroidMm ?? {};
        const { areaMm2: area, secondMomentsMm4: about } = before;
        const scale = scaleOf(before) + area * (dx * dx + dy * dy);
        expectClose(after.centroidMm?.x, x + dx, ROUNDING, after.maxRadiusMm + before.maxRadiusMm);
        expectClose(after.secondMomentsMm4.xx, about.xx + area * (2 * y * dy + dy * dy), ROUNDING, scale);
        expectClose(after.secondMomentsMm4.yy, about.yy + area * (2 * x * dx + dx * dx), ROUNDING, scale);
        expectClose(
          after.secondMomentsMm4.xy,
          about.xy + area * (x * dy + y * dx + dx * dy),
          ROUNDING,
          scale,
        );
        expectClose(after.centroidalMomentsMm4?.xx, before.centroidalMomentsMm4?.xx ?? 0, 1e-11);
      }),
      { seed: 4 },
    );
  });
});

describe("holes", () => {
  it("take off exactly what they are", () => {
    fc.assert(
      fc.property(soundOutline, (outline) => {
        const whole = sectionOf({ outer: outline.outer, inner: [] });
        const left = sectionOf(outline);
        const pieces = outline.inner.map((hole) => sectionOf(outlineOf(hole)));
        const less = (of: (section: Section) => number) =>
          pieces.reduce((rest, piece) => rest - of(piece), of(whole));
        const scale = scaleOf(whole);
        expectClose(
          left.areaMm2,
          less(({ areaMm2 }) => areaMm2),
          ROUNDING,
        );
        expectClose(
          left.secondMomentsMm4.xx,
          less((piece) => piece.secondMomentsMm4.xx),
          ROUNDING,
        );
        expectClose(
          left.secondMomentsMm4.yy,
          less((piece) => piece.secondMomentsMm4.yy),
          ROUNDING,
        );
        expectClose(
          left.secondMomentsMm4.xy,
          less((piece) => piece.secondMomentsMm4.xy),
          ROUNDING,
          scale,
        );
        const firstX = (section: Section) => section.areaMm2 * (section.centroidMm?.x ?? 0);
        expectClose(firstX(left), less(firstX), ROUNDING, whole.areaMm2 * whole.maxRadiusMm);
        expectClose(
          left.perimeterMm,
          pieces.reduce((sum, { perimeterMm }) => sum + perimeterMm, whole.perimeterMm),
          ROUNDING,
        );
      }),
      { seed: 5 },
    );
  });
});
