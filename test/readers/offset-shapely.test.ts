/** Outward offsets against GEOS's buffers, made by Debian's shapely in another process and another language. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Segment } from "../../geometry/outline/segment.ts";
import { expectBetween, OFFSET_CASES } from "./offset-cases.ts";

/** Chords of the outline stray this far from its arcs, and the reader's round joins again from theirs. */
const CHORD_MM = 2e-3;
/** Both chords, and rounding. */
const STRAY_MM = 2 * CHORD_MM + 1e-6;

/** Every third one: the reader takes its time. */
const CASES = OFFSET_CASES.filter((_, i) => i % 3 === 0);

interface Reading {
  readonly areaMm2: number;
  readonly points: readonly (readonly [number, number])[];
}

function packed(segment: Segment): readonly (string | number)[] {
  const { x, y } = segment.from;
  if (segment.kind === "line") return ["line", x, y];
  const { centre, radiusMm, startRad, sweepRad } = segment;
  return ["arc", x, y, centre.x, centre.y, radiusMm, startRad, sweepRad];
}

function offsetWithShapely(): readonly Reading[] {
  const cases = CASES.map(({ outer, distanceMm }) => ({
    distance: distanceMm,
    segments: outer.segments.map(packed),
  }));
  const run = spawnSync("/usr/bin/python3", [join(import.meta.dirname, "offset-shapely.py")], {
    input: JSON.stringify({ chord: CHORD_MM, cases }),
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  if (run.error || run.status !== 0)
    throw new Error(
      `The reader did not run (it needs the Debian packages python3 and python3-shapely): ${run.error ?? run.stderr}`,
    );
  return JSON.parse(run.stdout);
}

describe("offsets as GEOS makes them", () => {
  const readings = offsetWithShapely();

  it("are all made", () => {
    expect(readings.length).toBe(CASES.length);
    expect(readings.length).toBeGreaterThan(60);
  });

  it.each(CASES.map((offsetCase, i) => ({ ...offsetCase, reading: readings[i] })))(
    "$name",
    ({ reading, ...offsetCase }) => {
      if (!reading) throw new Error("the reader left this outline out");
      const points = reading.points.map(([x, y]) => ({ x, y }));
      expectBetween(offsetCase, points, reading.areaMm2, STRAY_MM);
    },
  );
});
