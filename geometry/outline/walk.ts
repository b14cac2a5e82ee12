import type { PathDesign, Point, StepDesign } from "../language/design.ts";
import type { Report } from "../language/problem.ts";
import type { Run } from "./chain.ts";
import { standIn, stepSegments } from "./step.ts";

type FromStep = Extract<StepDesign, { kind: "from" }>;
export type CloseStep = Extract<StepDesign, { kind: "close" }>;

/** A path as far as its steps draw it, before it is closed, repeated or mirrored. */
export interface Walk {
  readonly from: FromStep;
  readonly runs: readonly Run[];
  /** Where the last drawing step ended. */
  readonly end: Point;
  /** The last step other than `close`. */
  readonly last: StepDesign;
  readonly close: CloseStep | null;
}

/** Follows a path's steps; a step that fails is reported and replaced by a straight line. Null without a `from`. */
export function walkPath(path: PathDesign, report: Report): Walk | null {
  const from = path.steps[0];
  if (from?.kind !== "from") return null;
  const runs: Run[] = [];
  let end = from.to;
  let last: StepDesign = from;
  for (const step of path.steps.slice(1)) {
    // Whatever stands behind `close`, or starts anew, has been reported where the text was read.
    if (step.kind === "close") return { from, runs, end, last, close: step };
    if (step.kind === "from") continue;
    const segments = stepSegments(step, end, report) ?? standIn(step, end);
    if (segments.length > 0) runs.push({ segments, corner: step.corner });
    end = segments.at(-1)?.to ?? end;
    last = step;
  }
  return { from, runs, end, last, close: null };
}
