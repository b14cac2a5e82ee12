/// <reference path="./clipper-lib.d.ts" />
/**
 * Areas that two loops share or do not share, from the polygon clipper clipper-lib on flattened loops. It says how
 * much; whether loops meet at all is decided exactly, on lines and arcs, elsewhere.
 */
import ClipperLib from "clipper-lib";
import { flatten } from "../flatten.ts";
import type { Loop } from "../segment.ts";
import { perimeterOf } from "../segment-geometry.ts";

// The clipper hands its errors to the browser's alert box, which a core without a host does not have.
ClipperLib.Error = (message) => {
  throw new Error(message);
};

/** The clipper computes in whole numbers: a hundredth of a micrometre each, plenty beside the flattening. */
const UNITS_PER_MM = 1e5;

/** Chords stray this far from their arcs: fine enough for a figure in a message. */
const CHORD_MM = 1e-4;

/** What is no area but the flattening and the rounding: a strip along the loop, no wider than the chords stray. */
export const noAreaMm2 = (loop: Loop): number => perimeterOf(loop) * CHORD_MM;

/** The area in mm² inside both loops. */
export function sharedAreaMm2(a: Loop, b: Loop): number {
  return clippedAreaMm2(a, b, ClipperLib.ClipType.ctIntersection);
}

/** The area in mm² inside the first loop and outside the second. */
export function areaOutsideMm2(loop: Loop, other: Loop): number {
  return clippedAreaMm2(loop, other, ClipperLib.ClipType.ctDifference);
}

function clippedAreaMm2(subject: Loop, clip: Loop, operation: number): number {
  const clipper = new ClipperLib.Clipper();
  clipper.AddPath(wholePoints(subject), ClipperLib.PolyType.ptSubject, true);
  clipper.AddPath(wholePoints(clip), ClipperLib.PolyType.ptClip, true);
  const solution: { X: number; Y: number }[][] = [];
  const { pftNonZero } = ClipperLib.PolyFillType;
  clipper.Execute(operation, solution, pftNonZero, pftNonZero);
  // Holes in the result run clockwise and count negative.
  const area = solution.reduce((sum, path) => sum + ClipperLib.Clipper.Area(path), 0);
  return area / UNITS_PER_MM ** 2;
}

/** Throws a RangeError for a loop that is not finite: the clipper would go on with it, to no end or no sense. */
function wholePoints(loop: Loop): { X: number; Y: number }[] {
  const points = flatten(loop, CHORD_MM);
  const isWhole = points.length >= loop.segments.length && points.every(({ x, y }) => Number.isFinite(x + y));
  if (!isWhole) throw new RangeError("a loop with numbers that are not finite has no area");
  return points.map(({ x, y }) => ({ X: Math.round(x * UNITS_PER_MM), Y: Math.round(y * UNITS_PER_MM) }));
}
