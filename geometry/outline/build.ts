import type { Design, HoleDesign, OutlineDesign, PathDesign, SymmetryDesign } from "../language/design.ts";
import { failure } from "../language/evaluate/problems.ts";
import type { Problem, Report } from "../language/problem.ts";
import type { TextRange } from "../language/text.ts";
import { circle } from "./arc.ts";
import type { Chain } from "./chain.ts";
import { closedChain } from "./close-path.ts";
import { mirroredChain } from "./mirror.ts";
import { problemList } from "./problem-list.ts";
import { repeatedChain } from "./repeat.ts";
import type { InnerLoop, Loop, Outline, Segment } from "./segment.ts";
import { signedAreaOf } from "./segment-geometry.ts";
import { slotSegments } from "./slot.ts";
import { reversedLoop } from "./transform.ts";
import { treatCorners } from "./treat-corners.ts";
import { ORIGIN } from "./vector.ts";
import { type Walk, walkPath } from "./walk.ts";

export interface OutlineBuild {
  /** The exact shape; null where anything of it could not be made, so that no figure is worked out of half a shape. */
  readonly outline: Outline | null;
  /**
   * The shape as far as it can be drawn, for the eye alone: failed steps straight, failed corners sharp, failed holes
   * left out. The same as `outline` where that is there.
   */
  readonly draft: Outline | null;
  readonly problems: readonly Problem[];
}

/** Makes the loops of a design. All problems are errors of single steps; how the loops lie is `checkOutline`'s part. */
export function buildOutline(design: Design): OutlineBuild {
  const { report, problems } = problemList();
  const outer = design.outline && outerLoop(design.outline, report);
  const inner = design.holes.map((hole) => innerLoop(hole, report));
  const drawn = inner.filter((loop) => loop !== null);
  const draft = outer && { outer, inner: drawn };
  const isWhole = problems().length === 0 && drawn.length === inner.length;
  return { outline: isWhole ? draft : null, draft, problems: problems() };
}

function outerLoop({ path, symmetry, range }: OutlineDesign, report: Report): Loop | null {
  return directed(pathLoop(path, symmetry, range, report), 1);
}

function innerLoop(hole: HoleDesign, report: Report): InnerLoop | null {
  const source = hole.range;
  switch (hole.kind) {
    case "bore":
      return { kind: "bore", segments: [circle(ORIGIN, hole.diameterMm.value / 2, source)], source };
    case "hole":
      return { kind: "hole", segments: [circle(hole.centre, hole.diameterMm.value / 2, source)], source };
    case "slot":
      return { kind: "slot", segments: slotSegments(hole.from, hole.to, hole.widthMm.value, source), source };
    case "cutout": {
      const loop = directed(pathLoop(hole.path, null, source, report), -1);
      return loop && { ...loop, kind: "cutout" };
    }
  }
}

/** More segments than this are not built: far more than any bar has, few enough to stay quick. */
const MOST_BUILT_SEGMENTS = 50_000;

function pathLoop(
  path: PathDesign,
  symmetry: SymmetryDesign | null,
  source: TextRange,
  report: Report,
): Loop | null {
  const walk = walkPath(path, report);
  if (walk === null) return null;
  if (path.steps.every((step) => step.kind === "from" || step.kind === "close")) reportEmpty(walk, report);
  const copies = symmetry?.kind === "repeat" ? symmetry.count : 1;
  const built = copies * walk.runs.reduce((sum, run) => sum + run.segments.length, 0);
  if (built > MOST_BUILT_SEGMENTS) {
    const message = `This path would make ${built} segments; the tool builds at most ${MOST_BUILT_SEGMENTS}.`;
    report(failure("too-many-segments", symmetry?.range ?? path.range, message));
    return null;
  }
  const segments: readonly Segment[] = treatCorners(wholeChain(walk, symmetry, report), report);
  return segments.length === 0 ? null : { segments, source };
}

function reportEmpty({ from }: Walk, report: Report): void {
  const message = "This path draws nothing: after from it needs lines or arcs, and close.";
  report(failure("loop-not-closed", from.range, message));
}

function wholeChain(walk: Walk, symmetry: SymmetryDesign | null, report: Report): Chain {
  switch (symmetry?.kind) {
    case "repeat":
      return repeatedChain(walk, symmetry.count, report);
    case "mirror":
      return mirroredChain(walk, symmetry.axis, report);
    default:
      return closedChain(walk, report);
  }
}

/** The loop run the way it should be: counter-clockwise for `sign` 1, clockwise for −1. */
function directed(loop: Loop | null, sign: 1 | -1): Loop | null {
  return loop && signedAreaOf(loop) * sign < 0 ? reversedLoop(loop) : loop;
}
