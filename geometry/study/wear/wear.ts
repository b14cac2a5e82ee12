/**
 * What wear does to a bar: its mass, balance, bite and energy as the teeth wear from the tip (`worn-tips.ts`) or their
 * faces are ground back (`ground-faces.ts`), each row from an exact outline.
 */

import type { Analysis } from "../../analysis/analyse.ts";
import { assess } from "../../analysis/assess.ts";
import { requirementLabel, standingOf } from "../../analysis/judge.ts";
import { isObstacle } from "../../analysis/judgements.ts";
import type { Assessment } from "../../figures/assessment.ts";
import type { Point } from "../../language/design.ts";
import { statedLimits } from "../../language/stated-limits.ts";
import { checkOutline } from "../../outline/check.ts";
import type { Outline } from "../../outline/segment.ts";
import { angleOf, wrapped } from "../../outline/vector.ts";
import { neededBalance } from "../needed-balance.ts";
import { groundFaces } from "./ground-faces.ts";
import { tipsOf } from "./tips.ts";
import { wornTips } from "./worn-tips.ts";

export const WEAR_MODELS = ["tip", "face"] as const;
/** `tip`: worn to a smaller radius about the axis. `face`: the face ground back, parallel to itself. */
export type WearModel = (typeof WEAR_MODELS)[number];

export interface WearRequest {
  readonly model?: WearModel;
  /** `one` is the first counter-clockwise from +x. */
  readonly teeth?: "all" | "one";
  /** How far, in mm, each from 0 up; left out, five even steps to 2 mm. */
  readonly byMm?: readonly number[];
}

export const DEFAULT_WEAR_MM: readonly number[] = [0.4, 0.8, 1.2, 1.6, 2];
/** More rows are not worked out. */
export const MOST_ROWS = 50;

export interface WearRow {
  readonly byMm: number;
  /** `null` where no sound bar is left, or no face to grind. */
  readonly bar: WornBar | null;
}

export interface WornBar {
  readonly outline: Outline;
  readonly tipRadiusMm: number;
  readonly tipSpeedMPerS: number | null;
  readonly massKg: number | null;
  readonly inertiaKgM2: number | null;
  readonly energyJ: number | null;
  readonly imbalanceGMm: number | null;
  readonly imbalanceDeg: number | null;
  readonly eccentricityMm: number;
  readonly gradeMmPerS: number | null;
  /** Deepest bite at the fastest closing speed that is studied. */
  readonly biteMm: number | null;
  /** Up to here all strikes are square on a face: 0 where a worn tip is flat, which skids. */
  readonly cleanBiteMPerS: number | null;
  /** Share of strikes that are square, at the same speed. */
  readonly squareShare: number | null;
  /** Requirements of the file that the worn bar fails. */
  readonly failed: readonly string[];
}

export interface WearStudy {
  readonly model: WearModel;
  readonly teeth: "all" | "one";
  readonly tips: readonly Point[];
  readonly closingMPerS: number | null;
  /** The bar as drawn first. */
  readonly rows: readonly WearRow[];
  readonly wanted: { readonly eccentricityMm: number; readonly text: string };
  /** The least wear at which the bar is no longer balanced as wanted; `null` where it stays so, or is not at first. */
  readonly leavesBalanceAtMm: number | null;
}

export type WearResult =
  | { readonly ok: true; readonly study: WearStudy }
  | { readonly ok: false; readonly reason: "file-has-errors" | "no-spin"; readonly message: string };

/** Never throws for what a text or a request may say. */
export function wearStudy(analysis: Analysis, request: WearRequest = {}): WearResult {
  const { outline, design, problems } = analysis;
  const obstacle = problems.find(isObstacle);
  if (obstacle)
    return {
      ok: false,
      reason: "file-has-errors",
      message: `Mend the file's errors first: ${obstacle.message}`,
    };
  if (!outline) return { ok: false, reason: "file-has-errors", message: "There is no bar to wear." };
  const model = request.model ?? "tip";
  if (model === "face" && !design.spin)
    return {
      ok: false,
      reason: "no-spin",
      message: "Which side of a tooth is its face depends on the spin: the file has none.",
    };
  const teeth = request.teeth ?? "all";
  const allTips = tipsOf(outline.outer);
  const tips = teeth === "all" ? allTips : allTips.slice(0, 1);
  const asked = [...new Set(request.byMm ?? DEFAULT_WEAR_MM)].filter(
    (mm) => mm > 0 && mm < Number.POSITIVE_INFINITY,
  );
  const byMm = asked.sort((a, b) => a - b).slice(0, MOST_ROWS);
  const at = (mm: number) => wornBar(analysis, outline, { model, tips, byMm: mm });
  const rows = [0, ...byMm].map((mm): WearRow => ({ byMm: mm, bar: at(mm) }));
  const { neededMm, text } = neededBalance(analysis);
  const { bite } = analysis.assessment;
  return {
    ok: true,
    study: {
      model,
      teeth,
      tips,
      closingMPerS: bite?.toMPerS ?? null,
      rows,
      wanted: { eccentricityMm: neededMm, text },
      leavesBalanceAtMm: leavesAt(at, rows, neededMm),
    },
  };
}

interface Wear {
  readonly model: WearModel;
  readonly tips: readonly Point[];
  readonly byMm: number;
}

function wornBar(analysis: Analysis, outline: Outline, { model, tips, byMm }: Wear): WornBar | null {
  const { design, assessment } = analysis;
  const { outer } = outline;
  const radiusMm = Math.max(...tips.map(({ x, y }) => Math.hypot(x, y)));
  const worn =
    model === "tip"
      ? byMm === 0
        ? outer
        : wornTips(outer, radiusMm - byMm, tips)
      : groundFaces(outer, byMm, tips, design.spin?.direction ?? "ccw");
  if (!worn) return null;
  const shape: Outline = { ...outline, outer: worn };
  const isSound = !checkOutline(shape, design, assessment.settings).some(
    ({ severity }) => severity === "error",
  );
  if (!isSound) return null;
  return measured(assess(design, shape, { isSimple: true, holdsAxis: true }, assessment.settings), shape);
}

function measured(assessment: Assessment, outline: Outline): WornBar | null {
  const { section, mass, bite, design } = assessment;
  if (!section?.centroidMm) return null;
  const { x, y } = section.centroidMm;
  const eccentricityMm = Math.hypot(x, y);
  const radPerS = design.spin?.radPerS ?? null;
  const struck = bite?.at(bite.toMPerS);
  return {
    outline,
    tipRadiusMm: section.maxRadiusMm,
    tipSpeedMPerS: radPerS === null ? null : (radPerS * section.maxRadiusMm) / 1000,
    massKg: mass?.massKg ?? null,
    inertiaKgM2: mass?.inertiaKgM2 ?? null,
    energyJ: mass && radPerS !== null ? (mass.inertiaKgM2 * radPerS ** 2) / 2 : null,
    imbalanceGMm: mass?.imbalanceGMm ?? null,
    imbalanceDeg: mass && mass.imbalanceDeg !== null ? (wrapped(angleOf({ x, y })) * 180) / Math.PI : null,
    eccentricityMm,
    gradeMmPerS: radPerS === null ? null : eccentricityMm * radPerS,
    biteMm: struck?.maxMm ?? null,
    cleanBiteMPerS: bite?.clean.closingMPerS ?? null,
    squareShare: struck?.squareShare ?? null,
    failed: failedOf(assessment),
  };
}

function failedOf(assessment: Assessment): readonly string[] {
  return statedLimits(assessment.design).flatMap((requirement) => {
    const standing = standingOf(requirement, assessment);
    return standing?.holds === false ? [requirementLabel(requirement, standing.figure)] : [];
  });
}

/** Bisection ends at a micrometre. */
const GOOD_MM = 1e-3;

/** Between the last row within and the first beyond; rows wide apart could hide a bar that comes back within. */
function leavesAt(
  at: (mm: number) => WornBar | null,
  rows: readonly WearRow[],
  neededMm: number,
): number | null {
  const isWithin = (bar: WornBar | null) => bar !== null && bar.eccentricityMm <= neededMm;
  const beyond = rows.findIndex(({ bar }) => bar !== null && !isWithin(bar));
  const [before, after] = [rows[beyond - 1], rows[beyond]];
  if (!before || !after || !isWithin(before.bar)) return null;
  let [low, high] = [before.byMm, after.byMm];
  while (high - low > GOOD_MM) {
    const middle = (low + high) / 2;
    if (isWithin(at(middle))) low = middle;
    else high = middle;
  }
  return high;
}
