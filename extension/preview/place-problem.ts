import type { Problem } from "../../geometry/language/problem.ts";
import type { ProblemCode } from "../../geometry/language/problem-codes.ts";
import type { TextRange } from "../../geometry/language/text.ts";
import { intersections } from "../../geometry/outline/intersect.ts";
import type { Loop, Outline, Segment } from "../../geometry/outline/segment.ts";
import { boundsOfLoop, pointAt } from "../../geometry/outline/segment-geometry.ts";
import { distance } from "../../geometry/outline/vector.ts";
import type { Drawing, PlanePoint } from "./protocol.ts";

const AXIS: PlanePoint = { x: 0, y: 0 };

/** Problems that lie at the spin axis, whatever part of the text they are told at. */
const AT_AXIS: readonly ProblemCode[] = ["axis-outside", "bore-missing"];

/**
 * Where on the drawing a problem is: on the axis or the centroid for what is wrong there, else on the segment or hole
 * that its part of the text made; `null` for what has no place, or the whole outline for one.
 */
export function placeOf(problem: Problem, outline: Outline, drawing: Drawing): PlanePoint | null {
  if (AT_AXIS.includes(problem.code)) return AXIS;
  if (problem.code === "imbalance-over-grade") return drawing.centroid;
  const loops = [outline.outer, ...outline.inner];
  if (problem.code === "loop-crosses-itself") {
    const crossing = firstOf(loops, (loop) => crossingOn(problem.range, loop));
    if (crossing) return crossing;
  }
  const hole = outline.inner.find((loop) => loop.kind !== "cutout" && touches(loop.source, problem.range));
  return hole ? middleOf(hole) : firstOf(loops, (loop) => placeOnLoop(problem.range, loop));
}

function firstOf(loops: readonly Loop[], placeOn: (loop: Loop) => PlanePoint | null): PlanePoint | null {
  for (const loop of loops) {
    const place = placeOn(loop);
    if (place) return place;
  }
  return null;
}

function placeOnLoop(range: TextRange, loop: Loop): PlanePoint | null {
  const made = loop.segments.filter(({ source }) => touches(source, range));
  if (made.length === loop.segments.length && loop.segments.length > 1) return null;
  // The narrowest text is the closest answer: a corner's own words before the step around it.
  const [closest] = made.sort((a, b) => lengthOf(a.source) - lengthOf(b.source));
  return closest ? plain(pointAt(closest, 0.5)) : null;
}

/** Where a segment of a part of the text meets another one of its loop, elsewhere than at its own ends. */
function crossingOn(range: TextRange, { segments }: Loop): PlanePoint | null {
  const made = segments.filter(({ source }) => touches(source, range));
  for (const [one, other] of made.flatMap((one) => segments.map((other) => [one, other] as const))) {
    if (one === other) continue;
    const crossing = intersections(one, other).find((point) => !isEnd(point, one) && plain(point));
    if (crossing) return plain(crossing);
  }
  return null;
}

/** Nearer to an end than this it is the corner itself; a crossing so near to one is seen at the corner all the same. */
const CORNER_MM = 1e-3;

function isEnd(point: PlanePoint, { from, to }: Segment): boolean {
  return Math.min(distance(point, from), distance(point, to)) <= CORNER_MM;
}

function middleOf(loop: Loop): PlanePoint {
  const { minX, maxX, minY, maxY } = boundsOfLoop(loop);
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

/** Whether two stretches of text share a sign; an empty one touches what it lies in. */
function touches(a: TextRange, b: TextRange): boolean {
  if (b.start === b.end) return a.start <= b.start && b.start <= a.end;
  return a.start < b.end && b.start < a.end;
}

function lengthOf({ start, end }: TextRange): number {
  return end - start;
}

function plain({ x, y }: PlanePoint): PlanePoint | null {
  return Number.isFinite(x) && Number.isFinite(y) ? { x, y } : null;
}
