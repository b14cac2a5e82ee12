import type { Analysis } from "../../geometry/analysis/analyse.ts";
import { standingOf } from "../../geometry/analysis/judge.ts";
import { handles } from "../../geometry/editing/editing.ts";
import { figureValue } from "../../geometry/figures/catalogue.ts";
import { summaryOf } from "../../geometry/files/report.ts";
import { statedLimits } from "../../geometry/language/stated-limits.ts";
import type { Outline, Segment } from "../../geometry/outline/segment.ts";
import {
  type Bounds,
  boundsOfLoop,
  farthestFromAxis,
  unitedBounds,
} from "../../geometry/outline/segment-geometry.ts";
import { distance } from "../../geometry/outline/vector.ts";
import { neededBalance } from "../../geometry/study/needed-balance.ts";
import { describe } from "./describe.ts";
import type { AheadDrawing, Drawing, DrawnLoop, PlanePoint, View } from "./protocol.ts";

/** The drawing of an analysis; `null` where there is no outline, or one that no drawing can hold. */
export function drawingOf(analysis: Analysis): Drawing | null {
  const ahead = aheadDrawingOf(analysis);
  return ahead && { ...ahead, handles: handles(analysis) };
}

/** The same without its points. */
export function aheadDrawingOf(analysis: Analysis): AheadDrawing | null {
  const { outline, design, assessment } = analysis;
  if (!outline) return null;
  const bounds = boundsOfOutline(outline);
  const size: Drawing["boundsMm"] = [bounds.minX, bounds.minY, bounds.maxX, bounds.maxY];
  if (!size.every(Number.isFinite)) return null;
  return {
    loops: drawnLoops(outline),
    boundsMm: size,
    maxRadiusMm: reachOf(outline),
    centroid: pointOrNull(assessment.section?.centroidMm),
    imbalanceDeg: finiteOrNull(assessment.mass?.imbalanceDeg),
    ...balanceOf(analysis),
    finelyBalanced: isFinelyBalanced(analysis),
    tips: tipsOf(outline),
    direction: design.spin?.direction ?? null,
  };
}

/** The drawing in words, in both systems of units. */
export function descriptionOf(analysis: Analysis, reports: View["reports"]): View["description"] {
  return { mm: describe(analysis, "mm", reports.mm), in: describe(analysis, "in", reports.in) };
}

/** The report in both systems of units. */
export function reportsOf(analysis: Analysis): View["reports"] {
  return { mm: summaryOf(analysis, "mm"), in: summaryOf(analysis, "in") };
}

/** The loops of an outline as the page draws them, the outer one first. */
export function drawnLoops({ outer, inner }: Outline): DrawnLoop[] {
  return [
    { kind: "outer", segments: outer.segments },
    ...inner.map(({ kind, segments }): DrawnLoop => ({ kind, segments })),
  ];
}

/** The imbalance against the tightest limit on it: one the file requires, else the grade that is expected of any bar. */
function balanceOf({ design, assessment }: Analysis): Pick<Drawing, "balanced" | "imbalanceShare"> {
  const required = statedLimits(design)
    .filter(({ figure, relation }) => relation === "<=" && (figure === "balance" || figure === "imbalance"))
    .flatMap((requirement) => standingOf(requirement, assessment) ?? [])
    .map(({ value, limit }) => shareOf(value, limit));
  const expected = shareOf(figureValue("balanceGrade", assessment), assessment.settings.balanceGrade);
  const shares = required.length > 0 ? required : [expected];
  const known = shares.filter((share) => share !== null);
  if (known.length === 0) return { balanced: null, imbalanceShare: null };
  const worst = Math.max(...known);
  return { balanced: worst <= 1, imbalanceShare: worst };
}

function isFinelyBalanced(analysis: Analysis): boolean {
  const centroid = analysis.assessment.section?.centroidMm;
  return centroid ? Math.hypot(centroid.x, centroid.y) <= neededBalance(analysis).aimMm : false;
}

function shareOf(value: unknown, limit: number): number | null {
  if (typeof value !== "number" || !(limit > 0)) return null;
  return finiteOrNull(value / limit);
}

function boundsOfOutline({ outer, inner }: Outline): Bounds {
  return inner.map(boundsOfLoop).reduce(unitedBounds, boundsOfLoop(outer));
}

function reachOf({ outer }: Outline): number {
  return outer.segments.reduce((most, segment) => Math.max(most, farthestFromAxis(segment).distanceMm), 0);
}

/** More places at the largest radius than this is a disc, not a bar with tips. */
const MOST_TIPS = 12;

/** Two radii are the same tip circle up to this share: far below what is cut, far above rounding. */
const SAME_RADIUS = 1e-6;

function tipsOf(outline: Outline): PlanePoint[] {
  const reach = reachOf(outline);
  const tips: PlanePoint[] = [];
  for (const point of outline.outer.segments.flatMap((segment) => tipOf(segment, reach))) {
    if (!tips.some((known) => distance(known, point) <= SAME_RADIUS * reach)) tips.push(point);
  }
  return tips.length > MOST_TIPS ? [] : tips;
}

function tipOf(segment: Segment, reach: number): PlanePoint[] {
  const { point, distanceMm } = farthestFromAxis(segment);
  return distanceMm >= reach * (1 - SAME_RADIUS) ? [{ x: point.x, y: point.y }] : [];
}

function pointOrNull(point: PlanePoint | null | undefined): PlanePoint | null {
  if (!point || !Number.isFinite(point.x) || !Number.isFinite(point.y)) return null;
  return { x: point.x, y: point.y };
}

function finiteOrNull(value: number | null | undefined): number | null {
  return typeof value === "number" && Number.isFinite(value) ? value : null;
}
