/** Offsets as clipper-lib makes them: of polygons of whole numbers, with round joins. */
import ClipperLib from "clipper-lib";
import { flatten } from "../../geometry/outline/flatten.ts";
import type { Loop } from "../../geometry/outline/segment.ts";

export interface IntPoint {
  X: number;
  Y: number;
}

/** The part of the package that offsets; it brings no types. */
interface Offsetter {
  ClipperOffset: new (
    miterLimit: number,
    arcTolerance: number,
  ) => {
    AddPath(path: IntPoint[], join: number, end: number): void;
    Execute(solution: IntPoint[][], delta: number): void;
  };
  JoinType: { jtRound: number };
  EndType: { etClosedPolygon: number };
}

/** All paths of the offset, in whole units; chords stray `chordMm` from arcs, on the way in and in round joins. */
export function clipperOffset(
  outer: Loop,
  distanceMm: number,
  { chordMm, unitsPerMm }: { chordMm: number; unitsPerMm: number },
): IntPoint[][] {
  const { ClipperOffset, JoinType, EndType } = ClipperLib as unknown as Offsetter;
  const offset = new ClipperOffset(2, chordMm * unitsPerMm);
  const path = flatten(outer, chordMm).map(({ x, y }) => ({
    X: Math.round(x * unitsPerMm),
    Y: Math.round(y * unitsPerMm),
  }));
  offset.AddPath(path, JoinType.jtRound, EndType.etClosedPolygon);
  const solution: IntPoint[][] = [];
  offset.Execute(solution, distanceMm * unitsPerMm);
  return solution;
}
