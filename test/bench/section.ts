/** Section properties: our closed forms against a converged flattening and against a library with true arcs. */
import { polygonArea, polygonCentroid } from "d3-polygon";
import { sectionOf } from "../../geometry/figures/section.ts";
import type { ArcSegment, Loop, Outline } from "../../geometry/outline/segment.ts";
import { signedAreaOf } from "../../geometry/outline/segment-geometry.ts";
import { chordsOf } from "../support/chords.ts";
import { flattenJsPolygon } from "../support/flatten-js-polygon.ts";
import { type BulgeCorner, bulgeLoop, circle, outlineOf } from "../support/loops.ts";
import type { BenchCase } from "./harness.ts";

const ACCURACY = 1e-9;
const BORE_AND_HOLES = [circle(11), circle(4, [30, 0]), circle(4, [-30, 0]), circle(4, [0, 30])];

/** A wavy disc of that many segments, every other one an arc; the bore and three holes are four of them. */
function wavyOutline(segments: number): Outline {
  const corners = segments - BORE_AND_HOLES.length;
  const outer = Array.from({ length: corners }, (_, i): BulgeCorner => {
    const angle = (2 * Math.PI * i) / corners;
    const radius = 100 + 9 * Math.sin(5 * angle) + 4 * Math.cos(3 * angle);
    return [radius * Math.cos(angle), radius * Math.sin(angle), i % 2 === 0 ? 0 : 0.2];
  });
  return outlineOf(bulgeLoop(outer), ...BORE_AND_HOLES);
}

const outline = wavyOutline(60);
const loopsOf = ({ outer, inner }: Outline): readonly Loop[] => [outer, ...inner];
const exact = sectionOf(outline);

type Corners = [number, number][];

/** Area and centroid as the polygon library gives them, the loops after the first taken off. */
function polygonSection(loops: readonly Corners[]): { area: number; x: number; y: number } {
  let [area, firstX, firstY] = [0, 0, 0];
  for (const [i, corners] of loops.entries()) {
    const signed = (i === 0 ? 1 : -1) * Math.abs(polygonArea(corners));
    const [x, y] = polygonCentroid(corners);
    area += signed;
    firstX += signed * x;
    firstY += signed * y;
  }
  return { area, x: firstX / area, y: firstY / area };
}

/**
 * A flattening by the angle of a chord at radius 1. A chord over δ cuts off an area of r²·δ³/12, so the fewest points
 * for an area take δ as r^(−2/3).
 */
function flattened(stepRad: number): Corners[] {
  const chordsIn = ({ sweepRad, radiusMm }: ArcSegment) =>
    Math.ceil((Math.abs(sweepRad) / stepRad) * radiusMm ** (2 / 3));
  return loopsOf(outline).map((loop) => chordsOf(loop, chordsIn));
}

/** The widest step that gives the area to the wanted accuracy: the error goes as its square. */
function convergedStepRad(): number {
  const errorOf = (stepRad: number) => Math.abs(polygonSection(flattened(stepRad)).area / exact.areaMm2 - 1);
  const trialRad = 0.02;
  const stepRad = 0.995 * trialRad * Math.sqrt(ACCURACY / errorOf(trialRad));
  if (errorOf(stepRad) > ACCURACY) throw new Error("the flattening has not converged");
  return stepRad;
}

/** Richardson from two even flattenings, the second twice as fine. */
function extrapolatedArea(chords: number): number {
  const areaIn = (n: number) => polygonSection(loopsOf(outline).map((loop) => chordsOf(loop, () => n))).area;
  const [coarse, fine] = [areaIn(chords), areaIn(2 * chords)];
  return fine + (fine - coarse) / 3;
}

function convergedChords(): number {
  let chords = 4;
  while (Math.abs(extrapolatedArea(chords) / exact.areaMm2 - 1) > ACCURACY) chords += 4;
  return chords;
}

const stepRad = convergedStepRad();
const prepared = flattened(stepRad);
const points = prepared.reduce((sum, corners) => sum + corners.length, 0);
const chords = convergedChords();
const arcPolygon = flattenJsPolygon(outline);
const [thousand, tenThousand] = [wavyOutline(1000), wavyOutline(10_000)];

const sumOf = ({ areaMm2, centroidMm, secondMomentsMm4: { xx, yy, xy } }: ReturnType<typeof sectionOf>) =>
  areaMm2 + (centroidMm?.x ?? 0) + (centroidMm?.y ?? 0) + xx + yy + xy;
const sumOfPolygon = ({ area, x, y }: ReturnType<typeof polygonSection>) => area + x + y;

const area = "section";
const FLATTENED = "area and centroid, d3-polygon on a flattening to 1e-9";
const PREPARED = "the same, the flattening ready beforehand";
const TRUE_ARCS = "exact area, flatten-js on its own polygon";
const THOUSAND = "all section properties, 1 000 segments";

export const cases: readonly BenchCase[] = [
  {
    area,
    name: FLATTENED,
    inputs: `60 segments, ${points} points`,
    run: () => sumOfPolygon(polygonSection(flattened(stepRad))),
  },
  { area, name: PREPARED, inputs: `${points} points`, run: () => sumOfPolygon(polygonSection(prepared)) },
  {
    area,
    name: "area alone, d3-polygon on two flattenings, extrapolated to 1e-9",
    inputs: `60 segments, ${chords} and ${2 * chords} chords an arc`,
    peer: FLATTENED,
    run: () => extrapolatedArea(chords),
  },
  {
    area,
    name: "all section properties, ours",
    inputs: "60 segments",
    // The harder comparison: the peer's points cost it nothing, and it has no second moments to give.
    peer: PREPARED,
    target: 20,
    run: () => sumOf(sectionOf(outline)),
  },
  { area, name: TRUE_ARCS, inputs: "60 segments", run: () => arcPolygon.area() },
  {
    area,
    name: "exact area, ours",
    inputs: "60 segments",
    peer: TRUE_ARCS,
    target: 1,
    run: () => loopsOf(outline).reduce((sum, loop) => sum + signedAreaOf(loop), 0),
  },
  {
    area,
    name: "all section properties, ours, against exact area alone",
    inputs: "60 segments",
    peer: TRUE_ARCS,
    run: () => sumOf(sectionOf(outline)),
  },
  { area, name: THOUSAND, run: () => sumOf(sectionOf(thousand)) },
  {
    area,
    name: "all section properties, 10 000 segments",
    peer: THOUSAND,
    // Ten times the segments: a tenth is linear, a hundredth quadratic; memory that no longer fits the cache costs some.
    target: 1 / 20,
    run: () => sumOf(sectionOf(tenThousand)),
  },
];
