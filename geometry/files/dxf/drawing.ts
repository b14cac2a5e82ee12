import type { Point } from "../../language/design.ts";
import type { Outline } from "../../outline/segment.ts";
import { unitedBounds } from "../../outline/segment-geometry.ts";
import { times } from "../../outline/vector.ts";
import { type DrawingUnit, mmPerUnit } from "../drawing-unit.ts";
import { crossExtents, type Mark, markOf, UNNAMED } from "../mark.ts";
import { printableAscii } from "../printable-ascii.ts";
import { type CutShape, cutShapes } from "./cut-shapes.ts";
import { shapeExtents } from "./shape-extents.ts";

/** What each release writes down in its own way; every length is in the unit of the drawing. */
export interface Drawing {
  readonly units: DrawingUnit;
  /** The lower left and the upper right corner of the smallest upright box around all curves. */
  readonly least: Point;
  readonly greatest: Point;
  readonly shapes: readonly CutShape[];
  readonly cross: Mark["cross"];
  readonly name: { readonly at: Point; readonly height: number; readonly text: string };
}

/** A label, not a story: what lies beyond would be too small to read. */
const LONGEST_NAME = 60;

export function drawingOf(outline: Outline, name: string, units: DrawingUnit): Drawing {
  const perMm = 1 / mmPerUnit(units);
  const text = labelText(name);
  const mark = markOf(outline, text.length);
  const shapes = cutShapes(outline, mmPerUnit(units));
  const cross = mark.cross.map(([from, to]) => [times(from, perMm), times(to, perMm)] as const);
  const { minX, minY, maxX, maxY } = shapes.map(shapeExtents).reduce(unitedBounds, crossExtents(cross));
  return {
    units,
    least: { x: minX, y: minY },
    greatest: { x: maxX, y: maxY },
    shapes,
    cross,
    name: { at: times(mark.name.at, perMm), height: mark.name.heightMm * perMm, text },
  };
}

/** `%%`, `^` and `\` begin control codes in the format's text: they are replaced, not obeyed. */
function labelText(name: string): string {
  const text = printableAscii(name, UNNAMED).replace(/%{2,}/g, "%").replace(/\^/g, "'").replace(/\\/g, "/");
  return text.slice(0, LONGEST_NAME).trim();
}
