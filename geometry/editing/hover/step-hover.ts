/** Steps and corners: the lines and arcs that they draw. */
import type { Analysis } from "../../analysis/analyse.ts";
import type { Point } from "../../language/design.ts";
import type { TextRange } from "../../language/text.ts";
import type { CornerTreatment, Step } from "../../language/tree.ts";
import type { ArcSegment, Outline, Segment } from "../../outline/segment.ts";
import { lengthOf } from "../../outline/segment-geometry.ts";
import { reversedSegment } from "../../outline/transform.ts";
import { angleOf, distance, minus } from "../../outline/vector.ts";
import type { Hover, HoverPlace } from "../hover.ts";
import { optionHelp } from "../option-help.ts";
import { STEP_HELP } from "../statement-help.ts";
import { innermostStep } from "../tree-path.ts";
import { angleText, lengthText, placeText } from "../value-text.ts";
import { writtenPoints } from "../written-points.ts";
import { helpLines } from "./word-hover.ts";

/** A step: what it draws as it is cut, corners taken off. */
export function stepHover(place: HoverPlace, step: Step): Hover {
  const end = endOf(place.analysis, step);
  const drawn = runOfStep(place.analysis, step);
  const lines = step.kind === "from" && end !== null ? [placeText(end)] : segmentLines(drawn);
  return { range: step.keyword, lines: [...lines, ...helpLines(step.kind, STEP_HELP[step.kind])] };
}

/** A corner: the arc or line that takes it off. */
export function cornerHover(place: HoverPlace, corner: CornerTreatment, range: TextRange): Hover | null {
  const step = innermostStep(place.path);
  const help = optionHelp(corner.kind);
  if (step === null || help === null) return null;
  const drawn = runOfCorner(place.analysis, corner, step);
  return { range, lines: [...segmentLines(drawn), ...helpLines(corner.kind, help)] };
}

function endOf(analysis: Analysis, step: Step): Point | null {
  if (step.kind === "close") return null;
  return writtenPoints(analysis).find(({ point }) => point === step.to)?.at ?? null;
}

/**
 * What a step drew, in the direction it was written: loops may have been turned round, and repeat and mirror make
 * copies, of which the one is meant that ends nearest to the written end.
 */
function runOfStep(analysis: Analysis, step: Step): readonly Segment[] {
  const end = endOf(analysis, step);
  const runs = runsIn(analysis.outline, step.range);
  return end === null ? (runs[0] ?? []) : nearest(bothWays(runs), (run) => run.at(-1)?.to, end);
}

/** What a corner drew, from where its step ends; where the step is all taken up by corners, from nearest to its end. */
function runOfCorner(analysis: Analysis, corner: CornerTreatment, step: Step): readonly Segment[] {
  const start = runOfStep(analysis, step).at(-1)?.to ?? endOf(analysis, step);
  const runs = runsIn(analysis.outline, corner.range);
  return start === null ? (runs[0] ?? []) : nearest(bothWays(runs), (run) => run[0]?.from, start);
}

type Run = readonly Segment[];

function runsIn(outline: Outline | null, source: TextRange): readonly Run[] {
  const loops = outline === null ? [] : [outline.outer, ...outline.inner];
  return loops.flatMap(({ segments }) => runsOf(segments, source));
}

function bothWays(runs: readonly Run[]): readonly Run[] {
  return runs.flatMap((run) => [run, [...run].reverse().map(reversedSegment)]);
}

function nearest(runs: readonly Run[], placeOf: (run: Run) => Point | undefined, to: Point): Run {
  const gap = (run: Run) => distance(placeOf(run) ?? to, to);
  return [...runs].sort((a, b) => gap(a) - gap(b))[0] ?? [];
}

/** Neighbouring segments of one source; a loop may start in the middle of a run. */
function runsOf(segments: readonly Segment[], source: TextRange): readonly (readonly Segment[])[] {
  const isOurs = (segment: Segment | undefined) =>
    segment?.source.start === source.start && segment.source.end === source.end;
  const first = segments.findIndex((segment, i) => !isOurs(segments.at(i - 1)) && isOurs(segment));
  if (first < 0) return segments.every(isOurs) && segments.length > 0 ? [segments] : [];
  const runs: Segment[][] = [];
  for (const segment of [...segments.slice(first), ...segments.slice(0, first)]) {
    const last = runs.at(-1);
    const isNext = last !== undefined && isTouching(last.at(-1), segment);
    if (!isOurs(segment)) continue;
    if (isNext) last.push(segment);
    else runs.push([segment]);
  }
  return runs;
}

function isTouching(before: Segment | undefined, after: Segment): boolean {
  return before?.to.x === after.from.x && before.to.y === after.from.y;
}

function segmentLines(run: Run): readonly string[] {
  const [first] = run;
  const last = run.at(-1);
  if (first === undefined || last === undefined) return [];
  const ends = `From ${placeText(first.from)} to ${placeText(last.to)}`;
  if (run.length > 1) return [`${run.length} arcs, together ${lengthText(lengthOfRun(run))}`, ends];
  return first.kind === "arc"
    ? [arcText(first), `${ends}, about ${placeText(first.centre)}`]
    : [`Line: ${lengthText(lengthOf(first))} at ${angleText(angleOf(minus(first.to, first.from)))}`, ends];
}

function arcText(arc: ArcSegment): string {
  const side = arc.sweepRad > 0 ? "left" : "right";
  const sweep = `${angleText(Math.abs(arc.sweepRad))} to the ${side}`;
  return `Arc: radius ${lengthText(arc.radiusMm)}, ${sweep}, ${lengthText(lengthOf(arc))} long`;
}

function lengthOfRun(run: Run): number {
  return run.reduce((sum, segment) => sum + lengthOf(segment), 0);
}
