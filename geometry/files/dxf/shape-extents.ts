import type { Point } from "../../language/design.ts";
import type { Bounds } from "../../outline/segment-geometry.ts";
import type { BulgedVertex, CutShape } from "./cut-shapes.ts";

/**
 * The box around a shape as it stands in the file, arcs included. By the file's own vertices and bulges and not by the
 * model, whose arcs may meet their ends with a tolerance of their own.
 */
export function shapeExtents(shape: CutShape): Bounds {
  const reaches = shape.kind === "circle" ? circleReach(shape) : polylineReach(shape.vertices);
  return { minX: -reaches(-1, 0), minY: -reaches(0, -1), maxX: reaches(1, 0), maxY: reaches(0, 1) };
}

/** How far a shape reaches in a direction of length 1. */
type Reach = (x: number, y: number) => number;

function circleReach({ centre, radius }: { centre: Point; radius: number }): Reach {
  return (x, y) => centre.x * x + centre.y * y + radius;
}

function polylineReach(vertices: readonly BulgedVertex[]): Reach {
  return (x, y) =>
    vertices.reduce((most, from, index) => {
      const to = vertices[(index + 1) % vertices.length] ?? from;
      return Math.max(most, from.x * x + from.y * y, arcReach(from, to, x, y));
    }, Number.NEGATIVE_INFINITY);
}

/**
 * How far the inside of an arc of at most half a circle reaches; nothing for a line, or where an end reaches farther.
 *
 * Straight above its chord an arc rises by bc/2. In a direction that is tilted against that by an angle of sine t, the
 * arc's own farthest point lies c(1−b²)/4b · (1 − √(1−t²)) beyond, as long as it is on the arc: |t| ≤ 2b/(1+b²).
 */
function arcReach(from: BulgedVertex, to: Point, x: number, y: number): number {
  const bulge = Math.abs(from.bulge);
  const chordX = to.x - from.x;
  const chordY = to.y - from.y;
  const chord = Math.hypot(chordX, chordY);
  const t = (chordX * x + chordY * y) / chord;
  const towards = Math.sign(from.bulge) * (chordY * x - chordX * y);
  if (!(towards > 0) || Math.abs(t) > (2 * bulge) / (1 + bulge * bulge)) return Number.NEGATIVE_INFINITY;
  const tilt = (t * t) / (1 + Math.sqrt(1 - t * t));
  const beyond = ((chord * (1 - bulge * bulge)) / (4 * bulge)) * tilt;
  const middle = ((from.x + to.x) * x + (from.y + to.y) * y) / 2;
  return middle + (bulge * chord) / 2 + beyond;
}
