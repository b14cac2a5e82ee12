import type { Analysis } from "../../analysis/analyse.ts";
import type { Expression } from "../../language/tree.ts";
import { type WrittenPoint, writtenPoints } from "../written-points.ts";
import { type DrivingNumber, dependsOn, drivingNumber } from "./driving-number.ts";

/** A point of the text with the numbers that a drag would rewrite. */
export interface DraggablePoint extends WrittenPoint {
  /** Behind x, dx or the radius; null where that is computed in a way that no number of its own drives. */
  readonly first: DrivingNumber | null;
  /** Behind y, dy or the angle. */
  readonly second: DrivingNumber | null;
}

/** The points of an analysis in text order, each with what drives it. */
export function draggablePoints(analysis: Analysis): readonly DraggablePoint[] {
  return writtenPoints(analysis).map((written) => draggable(written, analysis));
}

/**
 * A number drives a coordinate only if nothing else of the point changes with it: a let that moves both coordinates,
 * or the point that this one counts from, would take the point to another place than it is dragged to.
 */
function draggable(written: WrittenPoint, analysis: Analysis): DraggablePoint {
  const { point } = written;
  const first = freeNumber(written, point.first, analysis);
  const second = freeNumber(written, point.second, analysis);
  if (first === null || second === null) return { ...written, first, second };
  // `(half, half)` moves along x, and y goes with it; in `(a + 1 mm, a)` it is the other way about.
  if (moves(first, point.second, analysis)) return { ...written, first, second: null };
  return { ...written, first: moves(second, point.first, analysis) ? null : first, second };
}

/** The number behind a coordinate, unless the point that this one counts from changes with it too. */
function freeNumber(
  { before }: WrittenPoint,
  expression: Expression | null,
  analysis: Analysis,
): DrivingNumber | null {
  const { source, variant } = analysis;
  const number = expression && drivingNumber(expression, source.tree, variant);
  if (number === null || number.drivenLet === null) return number;
  for (let other = before; other !== null; other = other.before) {
    if (moves(number, other.point.first, analysis) || moves(number, other.point.second, analysis))
      return null;
  }
  return number;
}

/** Whether an expression changes with the let that a number is the value of. */
function moves(
  { drivenLet }: DrivingNumber,
  expression: Expression | null,
  { source, variant }: Analysis,
): boolean {
  return (
    drivenLet !== null && expression !== null && dependsOn(expression, drivenLet.name, source.tree, variant)
  );
}
