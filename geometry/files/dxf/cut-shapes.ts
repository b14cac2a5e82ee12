import type { Point } from "../../language/design.ts";
import type { ArcSegment, Loop, Outline, Segment } from "../../outline/segment.ts";
import { distance, polar } from "../../outline/vector.ts";
import { COINCIDENT_MM, circleOf } from "../circle-of.ts";
import { CUT_INNER, CUT_OUTER, type CutLayer } from "../layers.ts";

/** Where a piece of a polyline begins; its bulge says how it bends on its way to the next vertex. */
export interface BulgedVertex extends Point {
  /** tan(θ/4), θ the angle of the arc: positive counter-clockwise, 0 for a line, ±1 for half a circle. */
  readonly bulge: number;
}

/** A bulge is half the height of its arc for a chord of length 1: fifteen decimals hold it to the last bit of a chord. */
export const BULGE_DIGITS = 15;

/** A closed curve as the exchange format can say it. */
export type CutShape =
  | { readonly kind: "circle"; readonly layer: CutLayer; readonly centre: Point; readonly radius: number }
  | { readonly kind: "polyline"; readonly layer: CutLayer; readonly vertices: readonly BulgedVertex[] };

/** Rounding in an angle of a few rad; a half circle is not to be split because of its last bit. */
const HALF_TURN_SLACK_RAD = 1e-12;

/** The loops of an outline, outer first, with every length divided by `mmPerUnit`. */
export function cutShapes(outline: Outline, mmPerUnit: number): CutShape[] {
  return [
    ...cutShape(outline.outer, CUT_OUTER, mmPerUnit),
    ...outline.inner.flatMap((loop) => cutShape(loop, CUT_INNER, mmPerUnit)),
  ];
}

/** One shape, or none for a loop that encloses nothing: no format has a word for it. */
function cutShape(loop: Loop, layer: CutLayer, mmPerUnit: number): CutShape[] {
  const arc = circleOf(loop);
  if (arc)
    return [
      { kind: "circle", layer, centre: scaled(arc.centre, mmPerUnit), radius: arc.radiusMm / mmPerUnit },
    ];
  const vertices = withoutZeroLengths(loop.segments.flatMap(verticesOf)).map(({ x, y, bulge }) => ({
    ...scaled({ x, y }, mmPerUnit),
    bulge,
  }));
  return vertices.length < 2 ? [] : [{ kind: "polyline", layer, vertices }];
}

function scaled({ x, y }: Point, mmPerUnit: number): Point {
  return { x: x / mmPerUnit, y: y / mmPerUnit };
}

/** The vertices a segment contributes: its start, and its middle where it bends by more than half a circle. */
function verticesOf(segment: Segment): BulgedVertex[] {
  const { from } = segment;
  if (segment.kind === "line") return [{ ...from, bulge: 0 }];
  const { sweepRad } = segment;
  if (Math.abs(sweepRad) <= Math.PI + HALF_TURN_SLACK_RAD) return [{ ...from, bulge: bulgeOf(sweepRad) }];
  const bulge = bulgeOf(sweepRad / 2);
  return [
    { ...from, bulge },
    { ...middleOf(segment), bulge },
  ];
}

/** Within ±1, so that the slack on a half circle never makes more than one of it. */
function bulgeOf(sweepRad: number): number {
  return Math.max(-1, Math.min(1, Math.tan(sweepRad / 4)));
}

function middleOf({ centre, radiusMm, startRad, sweepRad }: ArcSegment): Point {
  return polar(centre, radiusMm, startRad + sweepRad / 2);
}

/** No bulge exceeds 1 here, so a piece whose ends coincide has no length worth cutting, arc or line. */
function withoutZeroLengths(vertices: readonly BulgedVertex[]): BulgedVertex[] {
  return vertices.filter((vertex, index) => {
    const next = vertices[(index + 1) % vertices.length];
    return next !== undefined && distance(vertex, next) >= COINCIDENT_MM;
  });
}
