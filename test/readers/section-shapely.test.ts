/** Sections against GEOS, read by Debian's shapely in another process and another language. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Section, sectionOf } from "../../geometry/figures/section.ts";
import type { Outline, Segment } from "../../geometry/outline/segment.ts";
import { expectClose } from "../support/close-to.ts";
import { SECTION_OUTLINES } from "./section-outlines.ts";

/** What is left of the flattening's error after extrapolation, and of the reader's own rounding. */
const CONVERGED = 1e-11;

interface Reading {
  readonly valid: boolean;
  readonly areaMm2: number;
  readonly perimeterMm: number;
  readonly centroidMm: readonly [number, number];
  readonly secondMomentsMm4: Section["secondMomentsMm4"];
  readonly boundsMm: readonly number[];
  readonly maxRadiusMm: number;
}

function packed(segment: Segment): readonly (string | number)[] {
  const { x, y } = segment.from;
  if (segment.kind === "line") return ["line", x, y];
  const { centre, radiusMm, startRad, sweepRad } = segment;
  return ["arc", x, y, centre.x, centre.y, radiusMm, startRad, sweepRad];
}

function readWithShapely(outlines: readonly Outline[]): readonly Reading[] {
  const input = outlines.map(({ outer, inner }) =>
    [outer, ...inner].map(({ segments }) => segments.map(packed)),
  );
  const script = join(import.meta.dirname, "section-shapely.py");
  const run = spawnSync("/usr/bin/python3", [script], {
    input: JSON.stringify(input),
    encoding: "utf8",
    maxBuffer: 1 << 26,
  });
  if (run.error || run.status !== 0)
    throw new Error(
      `The reader did not run (it needs the Debian packages python3 and python3-shapely): ${run.error ?? run.stderr}`,
    );
  return JSON.parse(run.stdout);
}

describe("sections as GEOS reads them", () => {
  const readings = readWithShapely(SECTION_OUTLINES.map(([, outline]) => outline));

  it("are all read", () => {
    expect(readings.length).toBe(SECTION_OUTLINES.length);
    expect(readings.length).toBeGreaterThanOrEqual(50);
  });

  it.each(SECTION_OUTLINES.map(([name, outline], i) => ({ name, outline, reading: readings[i] })))(
    "$name",
    ({ outline, reading }) => {
      if (!reading) throw new Error("the reader left this outline out");
      const section = sectionOf(outline);
      expect(reading.valid).toBe(true);
      const { xx, yy, xy } = reading.secondMomentsMm4;
      expectClose(section.areaMm2, reading.areaMm2, CONVERGED);
      expectClose(section.perimeterMm, reading.perimeterMm, CONVERGED);
      expectClose(section.centroidMm?.x, reading.centroidMm[0], CONVERGED, section.maxRadiusMm);
      expectClose(section.centroidMm?.y, reading.centroidMm[1], CONVERGED, section.maxRadiusMm);
      expectClose(section.secondMomentsMm4.xx, xx, CONVERGED);
      expectClose(section.secondMomentsMm4.yy, yy, CONVERGED);
      expectClose(section.secondMomentsMm4.xy, xy, CONVERGED, xx + yy);
    },
  );

  it.each(SECTION_OUTLINES.map(([name, outline], i) => ({ name, outline, reading: readings[i] })))(
    "extent of $name",
    ({ outline, reading }) => {
      // The chords stay inside what they flatten, by the depth of an arc of a full turn in 384 at most.
      const section = sectionOf(outline);
      const depth = section.maxRadiusMm * (1 - Math.cos(Math.PI / 384));
      const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = reading?.boundsMm ?? [];
      const outside = [
        x0 - section.boundsMm[0],
        y0 - section.boundsMm[1],
        section.boundsMm[2] - x1,
        section.boundsMm[3] - y1,
        section.maxRadiusMm - (reading?.maxRadiusMm ?? 0),
      ];
      for (const by of outside) {
        expect(by).toBeGreaterThan(-1e-12 * section.maxRadiusMm);
        expect(by).toBeLessThan(depth);
      }
    },
  );
});
