/** Offsetting an outline outwards, true lines and arcs kept, beside a polygon clipper on a fine flattening. */
import ClipperLib from "clipper-lib";
import { flatten } from "../../geometry/outline/flatten.ts";
import { offsetOutwards } from "../../geometry/outline/offset/offset.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
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

/** The part of the package that offsets; it brings no types. */
interface Offsetter {
  ClipperOffset: new (
    miterLimit: number,
    arcTolerance: number,
  ) => {
    AddPath(path: readonly object[], join: number, end: number): void;
    Execute(solution: object[][], delta: number): void;
  };
  JoinType: { jtRound: number };
  EndType: { etClosedPolygon: number };
}

function clipped(outer: Loop): number {
  const { ClipperOffset, JoinType, EndType } = ClipperLib as unknown as Offsetter;
  const offset = new ClipperOffset(2, CHORD_MM * UNITS_PER_MM);
  const path = flatten(outer, CHORD_MM).map(({ x, y }) => ({
    X: Math.round(x * UNITS_PER_MM),
    Y: Math.round(y * UNITS_PER_MM),
  }));
  offset.AddPath(path, JoinType.jtRound, EndType.etClosedPolygon);
  const solution: object[][] = [];
  offset.Execute(solution, DISTANCE_MM * UNITS_PER_MM);
  return solution.length;
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
