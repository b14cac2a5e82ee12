import type { Analysis } from "../analysis/analyse.ts";
import type { Point } from "../language/design.ts";
import type { TextRange } from "../language/text.ts";
import { type DraggablePoint, draggablePoints } from "./drag/draggable-points.ts";

/** A point of the text that may be dragged: where it lies and where it is written. */
export interface Handle {
  /** Counts the points of the text; the same text gives the same numbers. */
  readonly id: number;
  readonly at: Point;
  readonly source: TextRange;
  /** False where x or y cannot be changed by dragging. */
  readonly movesX: boolean;
  readonly movesY: boolean;
}

/** The points of an analysis in text order; those that could not be evaluated are left out. */
export function handles(analysis: Analysis): readonly Handle[] {
  return draggablePoints(analysis).map(handleOf);
}

function handleOf({ point, at, first, second }: DraggablePoint, id: number): Handle {
  const both = first !== null && second !== null;
  const [movesX, movesY] = point.kind === "polar" ? [both, both] : [first !== null, second !== null];
  return { id, at: { x: at.x, y: at.y }, source: point.range, movesX, movesY };
}
