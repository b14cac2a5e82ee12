/** Outward offsets against clipper-lib's, which offsets polygons of whole numbers by sweeping them. */
import ClipperLib from "clipper-lib";
import { describe, it } from "vitest";
import { clipperOffset, type IntPoint } from "../support/clipper-offset.ts";
import { expectBetween, OFFSET_CASES, type OffsetCase } from "./offset-cases.ts";

const UNITS_PER_MM = 1e6;
/** Chords of the outline stray this far from its arcs, and the reader's round joins again from theirs. */
const CHORD_MM = 1e-3;
/**
 * Both chords, and the rounding to whole numbers on the way in and out. The reader rounds the count of chords in a join
 * instead of rounding it up, so one chord may be half as long again as it should, and 2.25 times as far off.
 */
const STRAY_MM = (1 + 2.25) * CHORD_MM + 4 / UNITS_PER_MM;

/** The reader's outermost path, counter-clockwise. */
function clipped({ outer, distanceMm }: OffsetCase): IntPoint[] {
  const solution = clipperOffset(outer, distanceMm, { chordMm: CHORD_MM, unitsPerMm: UNITS_PER_MM });
  const largest = solution.reduce((a, b) =>
    ClipperLib.Clipper.Area(b) > ClipperLib.Clipper.Area(a) ? b : a,
  );
  return largest;
}

describe("offsets as the polygon clipper makes them", () => {
  it.each(OFFSET_CASES)("$name", (offsetCase) => {
    const path = clipped(offsetCase);
    const points = path.map(({ X, Y }) => ({ x: X / UNITS_PER_MM, y: Y / UNITS_PER_MM }));
    const areaMm2 = ClipperLib.Clipper.Area(path) / UNITS_PER_MM ** 2;
    expectBetween(offsetCase, points, areaMm2, STRAY_MM);
  });
});
