/** Offsetting an outline outwards, true lines and arcs kept, beside a polygon clipper on a fine flattening. */
import { offsetOutwards } from "../../geometry/outline/offset/offset.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { clipperOffset } from "../support/clipper-offset.ts";
import { type BulgeCorner, bulgeLoop } from "../support/loops.ts";
import type { BenchCase } from "./harness.ts";

const AREA = "offset";
const DISTANCE_MM = 5;
const CHORD_MM = 1e-3;
const UNITS_PER_MM = 1e4;

/** A wheel of teeth, a quarter as many as segments, their tips and gullets arcs. */
function wheel(segments: number): Loop {
  const share = (2 * Math.PI) / segments;
  const bulge = Math.tan(share / 2);
  return bulgeLoop(
    Array.from({ length: segments / 4 }, (_, tooth) => {
      const [tip, root] = [120 + (tooth % 7) * 0.1, 100 + (tooth % 5) * 0.25];
      const corner = (radius: number, at: number, round: number): BulgeCorner => {
        const angle = (4 * tooth + at) * share;
        return [radius * Math.cos(angle), radius * Math.sin(angle), round];
      };
      return [corner(tip, 0, bulge), corner(tip, 2, 0), corner(root, 2, bulge), corner(root, 4, 0)];
    }).flat(),
  );
}

function clipped(outer: Loop): number {
  return clipperOffset(outer, DISTANCE_MM, { chordMm: CHORD_MM, unitsPerMm: UNITS_PER_MM }).length;
}

const PEER = "clipper-lib on a flattening good to 1 µm";
const small = wheel(60);

export const cases: readonly BenchCase[] = [
  {
    area: AREA,
    name: "exact offset by 5 mm",
    peer: PEER,
    inputs: "60 segments",
    run: () => offsetOutwards(small, DISTANCE_MM).loop.segments.length,
  },
  { area: AREA, name: PEER, inputs: "60 segments", run: () => clipped(small) },
  ...[1000, 4000].map((segments): BenchCase => {
    const outer = wheel(segments);
    const run = () => offsetOutwards(outer, DISTANCE_MM).loop.segments.length;
    return { area: AREA, name: `exact offset by 5 mm, ${segments} segments`, run };
  }),
];
