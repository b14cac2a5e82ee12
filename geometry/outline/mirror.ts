import type { Point } from "../language/design.ts";
import { failure } from "../language/evaluate/problems.ts";
import type { Report } from "../language/problem.ts";
import type { TextRange } from "../language/text.ts";
import { lineBetween } from "./arc.ts";
import type { Chain, Run } from "./chain.ts";
import { endingAt } from "./close-path.ts";
import { intersections } from "./intersect.ts";
import { lengthText, placeText, pointText } from "./length-text.ts";
import { closeFix, endFixes, runsLedTo } from "./path-end.ts";
import type { Segment } from "./segment.ts";
import { type Bounds, boundsOf } from "./segment-geometry.ts";
import { rewriteStep } from "./step.ts";
import { SAME_POINT_MM } from "./tolerance.ts";
import { mirroredSegment, reversedSegments } from "./transform.ts";
import { withEnds } from "./trim.ts";
import { distance } from "./vector.ts";
import type { Walk } from "./walk.ts";

type Axis = "x" | "y";

/**
 * The loop of `mirror x` or `mirror y`: the path and its reflection, run backwards. A path that does not start and end
 * on the axis, or crosses it, is reported; missing pieces are drawn straight to the axis.
 */
export function mirroredChain(walk: Walk, axis: Axis, report: Report): Chain {
  const start = onAxis(walk.from.to, axis);
  const end = onAxis(walk.end, axis);
  const startFits = reportStart(walk, axis, start, report);
  const endFits = reportEnd(walk, axis, end, report);
  if (startFits && endFits) reportCrossing(walk.runs, axis, report);
  const half = startingAt(endingAt(runsLedTo(walk, end), end, [], report), start, walk.from.range);
  return [...half, ...reflected(half, walk, axis)];
}

/** The nearest point of the axis. */
const onAxis = ({ x, y }: Point, axis: Axis): Point => (axis === "x" ? { x, y: 0 } : { x: 0, y });

/** The runs with the first one starting exactly at a point, or led there by a line from it. */
function startingAt(runs: Chain, start: Point, source: TextRange): Chain {
  const [first, ...rest] = runs;
  const [from, to] = [first?.segments[0]?.from, first?.segments.at(-1)?.to];
  if (first === undefined || from === undefined || to === undefined) return [];
  if (distance(start, from) > SAME_POINT_MM) {
    return [{ segments: [lineBetween(start, from, source)], corner: null }, ...runs];
  }
  return [{ ...first, segments: withEnds(first.segments, start, to) }, ...rest];
}

/** The reflected runs backwards: each ends where its original begins, in the corner before it. */
function reflected(half: Chain, walk: Walk, axis: Axis): Run[] {
  return half
    .map((run, i) => ({
      segments: reversedSegments(run.segments.map((segment) => mirroredSegment(segment, axis))),
      corner: (i === 0 ? walk.from.corner : half[i - 1]?.corner) ?? null,
    }))
    .reverse();
}

function reportStart(walk: Walk, axis: Axis, foot: Point, report: Report): boolean {
  const { from } = walk;
  const offMm = distance(from.to, foot);
  if (offMm <= SAME_POINT_MM) return true;
  const message = `This mirrored path starts ${lengthText(offMm)} off the ${axis} axis; it must start on it.`;
  const fixes = [rewriteStep(`Start at ${placeText(foot)}`, from, `from ${pointText(foot)}`)];
  report(failure("mirror-off-axis", from.range, message, fixes));
  return false;
}

function reportEnd(walk: Walk, axis: Axis, foot: Point, report: Report): boolean {
  const { close, last } = walk;
  const offMm = distance(walk.end, foot);
  if (close !== null) {
    const message = `A mirrored path is not closed: it ends on the ${axis} axis, and its reflection leads back.`;
    report(failure("mirror-off-axis", close.range, message, [closeFix(close, walk, foot)]));
    return false;
  }
  if (offMm <= SAME_POINT_MM) return true;
  const message = `This mirrored path ends ${lengthText(offMm)} off the ${axis} axis; it must end on it.`;
  report(failure("mirror-off-axis", last.range, message, endFixes(walk, foot)));
  return false;
}

/** Reports the first step that reaches over to the other side of the axis than the path began on. */
function reportCrossing(runs: readonly Run[], axis: Axis, report: Report): void {
  const segments = runs.flatMap((run) => run.segments);
  const side = segments.map((segment) => sidesOf(segment, axis)).find((sides) => sides.above !== sides.below);
  const over = segments.find((segment) => {
    const { above, below } = sidesOf(segment, axis);
    return side?.above ? below : above;
  });
  if (side === undefined || over === undefined) return;
  const place = crossingOf(over, axis);
  const message =
    `This mirrored path crosses the ${axis} axis${place ? ` at ${placeText(place)}` : ""}; it must stay on one side ` +
    `and meet the axis only where it starts and ends.`;
  report(failure("mirror-off-axis", over.source, message));
}

function sidesOf(segment: Segment, axis: Axis): { above: boolean; below: boolean } {
  const { minX, minY, maxX, maxY } = boundsOf(segment);
  const [low, high] = axis === "x" ? [minY, maxY] : [minX, maxX];
  return { above: high > SAME_POINT_MM, below: low < -SAME_POINT_MM };
}

/** Where a segment meets the axis, not counting its start. */
function crossingOf(segment: Segment, axis: Axis): Point | undefined {
  const { minX, minY, maxX, maxY }: Bounds = boundsOf(segment);
  const [a, b] =
    axis === "x"
      ? [
          { x: minX - 1, y: 0 },
          { x: maxX + 1, y: 0 },
        ]
      : [
          { x: 0, y: minY - 1 },
          { x: 0, y: maxY + 1 },
        ];
  const points = intersections(segment, lineBetween(a, b, segment.source));
  return points.find((point) => distance(point, segment.from) > SAME_POINT_MM) ?? points[0];
}
