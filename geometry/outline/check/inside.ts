import type { Point } from "../../language/design.ts";
import type { ArcSegment, Loop, Segment } from "../segment.ts";
import { distance, minus, polar, turnBetween } from "../vector.ts";

/**
 * Whether a point lies inside a loop, whichever way the loop runs. Exact for arcs; a point on the loop itself may come
 * out either way, so ask about points that are known to be off it.
 */
export function isInside(loop: Loop, point: Point): boolean {
  const turned = loop.segments.reduce((sum, segment) => sum + turnSeen(segment, point), 0);
  return Math.abs(turned) > Math.PI;
}

/** The angle by which one turns, standing at a point and looking along a segment from its start to its end. */
function turnSeen(segment: Segment, point: Point): number {
  if (segment.kind === "line") return chordTurn(segment.from, segment.to, point);
  const pieces = Math.ceil(Math.abs(segment.sweepRad) / (Math.PI / 2));
  let [sum, from] = [0, segment.from];
  for (let i = 1; i <= pieces; i++) {
    const to = i === pieces ? segment.to : arcPoint(segment, i / pieces);
    sum += chordTurn(from, to, point) + bulgeTurn(segment, from, to, point);
    from = to;
  }
  return sum;
}

const arcPoint = ({ centre, radiusMm, startRad, sweepRad }: ArcSegment, fraction: number): Point =>
  polar(centre, radiusMm, startRad + fraction * sweepRad);

function chordTurn(from: Point, to: Point, point: Point): number {
  return turnBetween(minus(from, point), minus(to, point));
}

/** Between an arc and its chord, the arc passes on the other side: a full turn more, the way the arc turns. */
function bulgeTurn(arc: ArcSegment, from: Point, to: Point, point: Point): number {
  if (distance(point, arc.centre) >= arc.radiusMm) return 0;
  const turning = Math.sign(arc.sweepRad);
  // The bulge of an arc that turns left lies to the right of its chord.
  const side = turnBetween(minus(to, from), minus(point, from));
  return side * turning < 0 ? turning * 2 * Math.PI : 0;
}
