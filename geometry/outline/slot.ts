import type { Point } from "../language/design.ts";
import type { TextRange } from "../language/text.ts";
import { circle, halfCircle, lineBetween } from "./arc.ts";
import type { Segment } from "./segment.ts";
import { SAME_POINT_MM } from "./tolerance.ts";
import { direction, distance, leftOf, minus, plus, times } from "./vector.ts";

/**
 * A slot, clockwise: two lines beside its axis, a half circle about each end of it. A slot whose ends are one point is
 * a round hole. The width is positive.
 */
export function slotSegments(from: Point, to: Point, widthMm: number, source: TextRange): Segment[] {
  if (distance(from, to) <= SAME_POINT_MM) return [circle(from, widthMm / 2, source)];
  const left = times(leftOf(direction(from, to)), widthMm / 2);
  const [startLeft, endLeft] = [plus(from, left), plus(to, left)];
  const [startRight, endRight] = [minus(from, left), minus(to, left)];
  return [
    lineBetween(startLeft, endLeft, source),
    halfCircle(endLeft, endRight, -1, source),
    lineBetween(endRight, startRight, source),
    halfCircle(startRight, startLeft, -1, source),
  ];
}
