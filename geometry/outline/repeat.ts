import type { Point } from "../language/design.ts";
import { failure } from "../language/evaluate/problems.ts";
import type { Report } from "../language/problem.ts";
import type { Chain } from "./chain.ts";
import { endingAt } from "./close-path.ts";
import { lengthText, placeText, pointText } from "./length-text.ts";
import { closeFix, endFixes, runsLedTo } from "./path-end.ts";
import { SAME_POINT_MM } from "./tolerance.ts";
import { movedSegment, turnByShare } from "./transform.ts";
import { distance } from "./vector.ts";
import type { Walk } from "./walk.ts";

/**
 * The loop of `repeat n`: the path and its turned copies. A path that does not end at its start turned by one share is
 * reported, and led there by a line so that it can be drawn.
 */
export function repeatedChain(walk: Walk, count: number, report: Report): Chain {
  const end = turnByShare(1, count).point(walk.from.to);
  reportMisfit(walk, end, count, report);
  const one = endingAt(runsLedTo(walk, end), end, [walk.from.corner], report);
  return Array.from({ length: count }, (_, k) => {
    const motion = turnByShare(k, count);
    return one.map((run) => ({ ...run, segments: run.segments.map((s) => movedSegment(s, motion)) }));
  }).flat();
}

function reportMisfit(walk: Walk, end: Point, count: number, report: Report): void {
  const { close, last } = walk;
  const gapMm = distance(walk.end, end);
  const where = `its start turned by ${Number((360 / count).toFixed(4))}°, ${pointText(end)}`;
  if (close !== null) {
    const message = `A repeated path is not closed: it ends at ${where}, where its next copy begins.`;
    report(failure("repeat-does-not-fit", close.range, message, [closeFix(close, walk, end)]));
  } else if (gapMm > SAME_POINT_MM) {
    const message = `This repeated path ends at ${placeText(walk.end)}, ${lengthText(gapMm)} from where it must end: ${where}.`;
    report(failure("repeat-does-not-fit", last.range, message, endFixes(walk, end)));
  }
}
