/** Leading a path to where its symmetry wants it to end: for drawing it all the same, and for fixes. */
import type { Point } from "../language/design.ts";
import { rewrite } from "../language/evaluate/problems.ts";
import type { Fix } from "../language/problem.ts";
import { lineBetween } from "./arc.ts";
import type { Run } from "./chain.ts";
import { placeText, pointText } from "./length-text.ts";
import { rewriteStep } from "./step.ts";
import { SAME_POINT_MM } from "./tolerance.ts";
import { distance } from "./vector.ts";
import type { CloseStep, Walk } from "./walk.ts";

/** The runs of a walk, and a line to where they should end if they do not. */
export function runsLedTo(walk: Walk, end: Point): readonly Run[] {
  if (distance(walk.end, end) <= SAME_POINT_MM) return walk.runs;
  return [...walk.runs, { segments: [lineBetween(walk.end, end, walk.last.range)], corner: null }];
}

/** Lets a last line end where the path should, or adds a line to there. */
export function endFixes({ last }: Walk, end: Point): Fix[] {
  const behind = { start: last.range.end, end: last.range.end };
  const added = rewrite(`Add a line to ${placeText(end)}`, behind, ` line ${pointText(end)}`);
  if (last.kind !== "line") return [added];
  return [rewriteStep(`End this line at ${placeText(end)}`, last, `line ${pointText(end)}`), added];
}

/** Takes a `close` away that a symmetry makes needless, or puts the line in its place that is missing. */
export function closeFix(close: CloseStep, walk: Walk, end: Point): Fix {
  if (distance(walk.end, end) <= SAME_POINT_MM) return rewrite("Delete close", close.range, "");
  return rewriteStep(`Draw a line to ${placeText(end)} instead`, close, `line ${pointText(end)}`);
}
