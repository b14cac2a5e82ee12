import type { Analysis } from "../../geometry/analysis/analyse.ts";
import { isBroken } from "../../geometry/analysis/broken.ts";
import { CAUTIONS } from "../../geometry/files/cautions.ts";
import type { Outline } from "../../geometry/outline/segment.ts";
import { aheadDrawingOf, descriptionOf, drawingOf, drawnLoops, reportsOf } from "./drawing.ts";
import { placeOf } from "./place-problem.ts";
import type { AheadDrawing, BitePoint, Drawing, Ghost, ShownBite, ShownProblem, View } from "./protocol.ts";

/** The parts of a view that stay on while a text is broken: they belong together and are never mixed. */
export type LastGood = Pick<View, "variant" | "drawing" | "description" | "ghosts" | "reports" | "bite">;

export interface ViewInput {
  readonly chosen: Analysis;
  /** The bar as it stands and the other variants, to draw behind; the chosen one among them is passed over. */
  readonly others: readonly Analysis[];
  readonly version: number;
  readonly documentUri: string;
  readonly fileName: string;
  /** What the call before gave as `lastGood`; `null` at first. */
  readonly lastGood: LastGood | null;
}

export interface ViewOutput {
  readonly view: View;
  /** To be handed to the next call for the same document. */
  readonly lastGood: LastGood | null;
}

/** The drawing of a text that is whole, for the page to show before the rest of its view is worked out. */
export function drawingAhead(chosen: Analysis): AheadDrawing | null {
  return isBroken(chosen) ? null : aheadDrawingOf(chosen);
}

/**
 * What the page shows of one state of a text. While the text is broken the last good drawing of the same variant
 * stays, marked as stale, with its own figures; problems are always those of the text as it is.
 */
export function viewOf(input: ViewInput): ViewOutput {
  const { chosen, version, documentUri, fileName } = input;
  const now = shownOf(chosen, input.others, drawingOf(chosen));
  const broken = isBroken(chosen) || now.drawing === null;
  const kept = input.lastGood?.variant === chosen.variant ? input.lastGood : null;
  const stale = broken && kept !== null;
  const shown = stale ? withoutHandles(kept) : now;
  const view = {
    ...shown,
    version,
    documentUri,
    fileName,
    variants: chosen.source.variants,
    stale,
    problems: shownProblems(chosen, stale ? null : now.drawing),
    cautions: CAUTIONS,
  };
  return { view, lastGood: broken ? input.lastGood : now };
}

/** The points of an older text: dragging one would rewrite the wrong place. */
function withoutHandles(kept: LastGood): LastGood {
  return { ...kept, drawing: kept.drawing && { ...kept.drawing, handles: [] } };
}

function shownOf(chosen: Analysis, others: readonly Analysis[], drawing: Drawing | null): LastGood {
  const reports = reportsOf(chosen);
  return {
    variant: chosen.variant,
    drawing,
    description: drawing && descriptionOf(chosen, reports),
    ghosts: ghostsOf(chosen, others),
    reports,
    bite: biteOf(chosen),
  };
}

function biteOf({ design, assessment: { bite, settings } }: Analysis): ShownBite | null {
  if (!bite || !design.spin) return null;
  return {
    target: design.target,
    direction: design.spin.direction,
    radPerS: design.spin.radPerS,
    squareStrikeRad: (settings.squareStrikeDeg * Math.PI) / 180,
    curve: bite.curve.map(shownPoint),
    cleanMPerS: bite.clean.closingMPerS,
    teethOnlyMPerS: bite.teethOnly.closingMPerS,
  };
}

/** A point of the curve without its strikes. */
function shownPoint(point: BitePoint): BitePoint {
  const { closingMPerS, maxMm, meanMm, tenthMm, ninetiethMm } = point;
  const { squareShare, toothShare, passedShare, idealMm } = point;
  return {
    closingMPerS,
    maxMm,
    meanMm,
    tenthMm,
    ninetiethMm,
    squareShare,
    toothShare,
    passedShare,
    idealMm,
  };
}

/** Other variants, one of each shape: one that only spins faster would hide behind the bar itself. */
function ghostsOf(chosen: Analysis, others: readonly Analysis[]): Ghost[] {
  const known = new Set(chosen.outline ? [shapeKey(chosen.outline)] : []);
  return others.flatMap(({ variant, outline }) => {
    if (variant === chosen.variant || !outline || known.has(shapeKey(outline))) return [];
    known.add(shapeKey(outline));
    return { variant, loops: drawnLoops(outline) };
  });
}

/** The same for outlines of the same loops, down to the last bit. */
function shapeKey({ outer, inner }: Outline): string {
  const loops = [outer, ...inner].map(({ segments }) =>
    segments.map((segment) =>
      segment.kind === "line" ? segment.to : [segment.to, segment.radiusMm, segment.sweepRad],
    ),
  );
  return JSON.stringify(loops);
}

function shownProblems({ problems, source, outline }: Analysis, drawing: Drawing | null): ShownProblem[] {
  return problems.map((problem) => ({
    severity: problem.severity,
    code: problem.code,
    message: problem.message,
    line: source.lines.position(problem.range.start).line,
    source: { start: problem.range.start, end: problem.range.end },
    at: outline && drawing ? placeOf(problem, outline, drawing) : null,
  }));
}
