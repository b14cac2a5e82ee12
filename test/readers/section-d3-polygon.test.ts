/** Areas and centroids against a polygon library, the error of the flattening driven out by extrapolation. */
import { polygonArea, polygonCentroid } from "d3-polygon";
import { describe, it } from "vitest";
import { sectionOf } from "../../geometry/figures/section.ts";
import type { Loop, Outline } from "../../geometry/outline/segment.ts";
import { chordsOf } from "../support/chords.ts";
import { expectClose } from "../support/close-to.ts";
import { SECTION_OUTLINES } from "./section-outlines.ts";

const CONVERGED = 1e-9;

type Sums = readonly [area: number, firstX: number, firstY: number];

/** The library counts a loop as positive or negative by a y axis that points down; here the outline's roles decide. */
function sumsOf(loop: Loop, chordsPerArc: number): Sums {
  const points = chordsOf(loop, () => chordsPerArc);
  const area = Math.abs(polygonArea(points));
  const [x, y] = polygonCentroid(points);
  return [area, area * x, area * y];
}

function less(a: Sums, b: Sums): Sums {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** Richardson: with twice the chords the error is a quarter, so b + (b − a)/3 is free of it, and so on by powers. */
function improved(coarse: Sums, fine: Sums, factor: number): Sums {
  const step = (i: 0 | 1 | 2) => fine[i] + (fine[i] - coarse[i]) / (factor - 1);
  return [step(0), step(1), step(2)];
}

function converged({ outer, inner }: Outline): Sums {
  const at = (chords: number) =>
    inner.map((loop) => sumsOf(loop, chords)).reduce(less, sumsOf(outer, chords));
  const [a, b, c] = [at(64), at(128), at(256)];
  return improved(improved(a, b, 4), improved(b, c, 4), 16);
}

describe("sections as a polygon library reads them", () => {
  it.each(SECTION_OUTLINES)("%s", (_, outline) => {
    const [area, firstX, firstY] = converged(outline);
    const section = sectionOf(outline);
    expectClose(section.areaMm2, area, CONVERGED);
    expectClose(section.centroidMm?.x, firstX / area, CONVERGED, section.maxRadiusMm);
    expectClose(section.centroidMm?.y, firstY / area, CONVERGED, section.maxRadiusMm);
  });
});
