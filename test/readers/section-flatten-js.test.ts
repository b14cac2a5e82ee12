/** Areas and cut lengths against a geometry library that keeps arcs as arcs. */
import { describe, expect, it } from "vitest";
import { sectionOf } from "../../geometry/figures/section.ts";
import { expectClose } from "../support/close-to.ts";
import { flattenJsPolygon } from "../support/flatten-js-polygon.ts";
import { SECTION_OUTLINES } from "./section-outlines.ts";

/** Both are exact; what is left is rounding. */
const ROUNDING = 1e-11;

describe("sections as a library with true arcs reads them", () => {
  it.each(SECTION_OUTLINES)("%s", (_, outline) => {
    const polygon = flattenJsPolygon(outline);
    const faces = [...polygon.faces];
    expect(faces.length).toBe(1 + outline.inner.length);
    const perimeterMm = faces.reduce((sum, face: { perimeter: number }) => sum + face.perimeter, 0);
    const section = sectionOf(outline);
    expectClose(section.areaMm2, polygon.area(), ROUNDING);
    expectClose(section.perimeterMm, perimeterMm, ROUNDING);
  });
});
