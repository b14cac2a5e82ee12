import { Arc, Point, Polygon, Segment as Straight } from "@flatten-js/core";
import type { ArcSegment, Outline, Segment } from "../../geometry/outline/segment.ts";
import { wrapped } from "../../geometry/outline/vector.ts";

/** An outline as that library's polygon, its arcs arcs. A full turn, which the library takes for none, is halved. */
export function flattenJsPolygon({ outer, inner }: Outline): Polygon {
  const polygon = new Polygon();
  for (const { segments } of [outer, ...inner]) polygon.addFace(segments.flatMap(shapesOf));
  return polygon;
}

function shapesOf(segment: Segment): (Straight | Arc)[] {
  const { from, to } = segment;
  if (segment.kind === "line") return [new Straight(new Point(from.x, from.y), new Point(to.x, to.y))];
  if (Math.abs(segment.sweepRad) < 2 * Math.PI) return [shapeOf(segment, 0, 1)];
  return [shapeOf(segment, 0, 0.5), shapeOf(segment, 0.5, 1)];
}

function shapeOf({ centre, radiusMm, startRad, sweepRad }: ArcSegment, from: number, to: number): Arc {
  const [startAngle, endAngle] = [wrapped(startRad + from * sweepRad), wrapped(startRad + to * sweepRad)];
  return new Arc(new Point(centre.x, centre.y), radiusMm, startAngle, endAngle, sweepRad > 0);
}
