import type { CornerDesign, Point } from "../language/design.ts";
import { failure, rewrite } from "../language/evaluate/problems.ts";
import type { Report } from "../language/problem.ts";
import { lineBetween } from "./arc.ts";
import type { Chain, Run } from "./chain.ts";
import { lengthText, placeText } from "./length-text.ts";
import { SAME_POINT_MM } from "./tolerance.ts";
import { withEnds } from "./trim.ts";
import { distance } from "./vector.ts";
import type { Walk } from "./walk.ts";

/** A path as one whole loop. One that is not closed is reported, and closed straight so that it can be drawn. */
export function closedChain(walk: Walk, report: Report): Chain {
  const { from, runs, end, last, close } = walk;
  const gapMm = distance(end, from.to);
  if (gapMm <= SAME_POINT_MM) {
    return endingAt(runs, from.to, [close?.corner ?? null, from.corner], report);
  }
  if (close === null) {
    const message =
      `This loop is not closed: it ends at ${placeText(end)}, ${lengthText(gapMm)} from its start at ` +
      `${placeText(from.to)}. Write close for a straight line back.`;
    const behind = { start: last.range.end, end: last.range.end };
    report(failure("loop-not-closed", last.range, message, [rewrite("Close the loop", behind, " close")]));
  }
  const source = close?.range ?? last.range;
  const back: Run = { segments: [lineBetween(end, from.to, source)], corner: close?.corner ?? null };
  return endingAt([...runs, back], from.to, [from.corner], report);
}

/**
 * The runs with the last one ending exactly where it should and carrying the treatment of the corner there, which may
 * be written at several places, but only once.
 */
export function endingAt(
  runs: readonly Run[],
  end: Point,
  otherCorners: readonly (CornerDesign | null)[],
  report: Report,
): Chain {
  const last = runs.at(-1);
  const first = last?.segments[0];
  if (last === undefined || first === undefined) return [];
  const [corner, second] = [last.corner, ...otherCorners].filter((candidate) => candidate !== null);
  if (second !== undefined) {
    const message = `The corner at ${placeText(end)}, where the path starts and ends, is treated twice: keep one.`;
    const fixes = [rewrite(`Delete this ${second.kind}`, second.range, "")];
    report(failure("corner-impossible", second.range, message, fixes));
  }
  const segments = withEnds(last.segments, first.from, end);
  return [...runs.slice(0, -1), { segments, corner: corner ?? null }];
}
