/**
 * What the tolerances of plate and cut do to balance: a sample of parts, each off at random within them, by a linear model
 * (`model.ts`), and what it takes to bring them into a grade by taking metal off.
 *
 * - The thickness of a part lies within the limits of its plate and grows evenly across it, in any direction, by no
 *   more than the plate may differ within itself.
 * - Each edge lies farther out or in, each hole farther to a side, by half of what the dimension that it ends may be off.
 * - The bore is the axis: where it is off, so is all else. How it sits on its shaft is not in here.
 */
import type { Analysis } from "../../analysis/analyse.ts";
import { isObstacle } from "../../analysis/judgements.ts";
import { BALANCE_GRADES, gradeName } from "../../figures/balance.ts";
import { norm } from "../../outline/vector.ts";
import { neededBalance } from "../needed-balance.ts";
import { causesOf, type Moments, momentsOf, type ThicknessSpread } from "./covariance.ts";
import { type CutTolerance, cutClass1 } from "./cut-tolerance.ts";
import type { Spread } from "./deviation.ts";
import {
  type Bin,
  type Distribution,
  distributionOf,
  histogramOf,
  type Share,
  shareOf,
} from "./distribution.ts";
import { type BalanceModel, balanceModel, type Cause } from "./model.ts";
import { type PlateClass, type PlateTolerance, plateTolerance, wedgeAcross } from "./plate-tolerance.ts";
import { type Part, sampleParts } from "./sample-parts.ts";
import { stockNeededMm, stockReach } from "./stock.ts";

export interface ToleranceRequest {
  /** A class of EN 10029, or limits of one's own; class A where nothing is said. */
  readonly plate?: PlateClass | PlateTolerance;
  /** ISO 9013 class 1 where nothing is said. */
  readonly cut?: CutTolerance;
  /** Most difference of thickness across the bar's largest diameter, mm; by the plate where nothing is said. */
  readonly wedgeMm?: number | null;
  readonly edges?: "each" | "together";
  readonly spread?: Spread;
  readonly gradeMmPerS?: number | null;
  readonly parts?: number;
  readonly seed?: number;
}

export const DEFAULT_PARTS = 5000;
export const LEAST_PARTS = 100;
export const MOST_PARTS = 100_000;

export interface ToleranceStudy {
  /** What was taken for given, to be told with the numbers. */
  readonly given: {
    readonly plate: PlateTolerance;
    readonly cut: CutTolerance;
    readonly wedgeMm: number;
    readonly edges: "each" | "together";
    readonly spread: Spread;
    readonly parts: number;
    readonly seed: number;
  };
  /** Of the outline as drawn. */
  readonly nominalGMm: number;
  readonly imbalanceGMm: Distribution;
  readonly eccentricityMm: Distribution;
  /** mm/s; `null` without a spin. */
  readonly grade: Distribution | null;
  readonly massKg: Distribution;
  /** What sampling aims at, by the model alone. */
  readonly expected: Moments;
  readonly causes: readonly { readonly cause: Cause; readonly rmsGMm: number }[];
  readonly wanted: { readonly eccentricityMm: number; readonly text: string };
  readonly within: Share;
  /** The share of parts within each grade of ISO 21940-11 that tells some from others; empty without a spin. */
  readonly byGrade: readonly {
    readonly name: string;
    readonly gradeMmPerS: number;
    readonly share: number;
  }[];
  /** Grams to take off at the largest radius of the heavy side to come within the grade. */
  readonly takeOffG: Distribution;
  /** The largest radius of the bar. */
  readonly atRadiusMm: number;
  /** Stock all round the outer edge with which grinding alone brings a part within the grade; see `stock.ts`. */
  readonly stockMm: Distribution;
  /** Of the grade, or of the eccentricity without a spin. */
  readonly histogram: readonly Bin[];
}

export type ToleranceResult =
  | { readonly ok: true; readonly study: ToleranceStudy }
  | {
      readonly ok: false;
      readonly reason: "file-has-errors" | "no-density" | "no-spin" | "no-plate-limit" | "no-cut-limit";
      readonly message: string;
    };

/** Never throws for what a text or a request may say; the same request gives the same numbers. */
export function toleranceStudy(analysis: Analysis, request: ToleranceRequest = {}): ToleranceResult {
  const { outline, assessment, design, problems } = analysis;
  const obstacle = problems.find(isObstacle);
  if (obstacle) return refusal("file-has-errors", `Mend the file's errors first: ${obstacle.message}`);
  const { section } = assessment;
  const thicknessMm = design.thicknessMm?.value;
  if (!outline || !section?.centroidMm || thicknessMm === undefined)
    return refusal("file-has-errors", "There is no bar to study.");
  if (design.densityKgPerM3 === null)
    return refusal("no-density", "Imbalance needs a material or a density.");
  const gradeMmPerS = request.gradeMmPerS ?? null;
  if (gradeMmPerS !== null && !design.spin)
    return refusal("no-spin", "A balance grade needs a spin: the file has none.");
  const plate = plateOf(request.plate ?? "A", thicknessMm);
  if (!plate) return refusal("no-plate-limit", noLimitText("EN 10029", thicknessMm, "the thickness"));
  const cut = request.cut ?? cutClass1(thicknessMm);
  const gPerMm3 = design.densityKgPerM3 * 1e-6;
  const edges = request.edges ?? "each";
  const model = cut && balanceModel({ outline, section, thicknessMm, gPerMm3, cut, edges });
  if (!cut || !model) return refusal("no-cut-limit", noLimitText("ISO 9013", thicknessMm, "a cut dimension"));
  const wedgeMm = request.wedgeMm ?? wedgeAcross(2 * section.maxRadiusMm, plate);
  const spread = request.spread ?? "uniform";
  const given = {
    plate,
    cut,
    wedgeMm,
    edges,
    spread,
    parts: Math.round(Math.min(MOST_PARTS, Math.max(LEAST_PARTS, request.parts ?? DEFAULT_PARTS))),
    seed: request.seed ?? 1,
  };
  const thickness = thicknessSpread(plate, thicknessMm, wedgeMm / (2 * section.maxRadiusMm));
  const parts = sampleParts(model, thickness, given);
  return { ok: true, study: studyOf(analysis, { model, thickness, parts, given, gradeMmPerS }) };
}

function refusal(
  reason: Extract<ToleranceResult, { ok: false }>["reason"],
  message: string,
): ToleranceResult {
  return { ok: false, reason, message };
}

function noLimitText(standard: string, thicknessMm: number, of: string): string {
  return `The table of ${standard} that is known here has no limit of ${of} for this bar of ${thicknessMm} mm plate: state your own.`;
}

function plateOf(plate: PlateClass | PlateTolerance, thicknessMm: number): PlateTolerance | null {
  return typeof plate === "string" ? plateTolerance(thicknessMm, plate) : plate;
}

function thicknessSpread(
  { lowerMm, upperMm }: PlateTolerance,
  thicknessMm: number,
  slopeLimit: number,
): ThicknessSpread {
  return {
    meanShare: 1 + (lowerMm + upperMm) / 2 / thicknessMm,
    halfRangeShare: (upperMm - lowerMm) / 2 / thicknessMm,
    slopeLimit,
  };
}

interface Sample {
  readonly model: BalanceModel;
  readonly thickness: ThicknessSpread;
  readonly parts: readonly Part[];
  readonly given: ToleranceStudy["given"];
  readonly gradeMmPerS: number | null;
}

function studyOf(
  analysis: Analysis,
  { model, thickness, parts, given, gradeMmPerS }: Sample,
): ToleranceStudy {
  const { outline, assessment, design } = analysis;
  const radPerS = design.spin?.radPerS ?? null;
  const wanted = wantedOf(analysis, gradeMmPerS);
  const atRadiusMm = assessment.section?.maxRadiusMm ?? 0;
  const gPerMm2 =
    (design.densityKgPerM3 ?? 0) * 1e-6 * (design.thicknessMm?.value ?? 0) * thickness.meanShare;
  const reach = outline ? stockReach(outline.outer, gPerMm2) : { supports: [] };
  const imbalance = parts.map(({ momentGMm }) => norm(momentGMm));
  const eccentricity = parts.map(({ massG }, i) => (imbalance[i] ?? 0) / massG);
  const grades = radPerS === null ? null : eccentricity.map((mm) => mm * radPerS);
  const allowed = parts.map(({ massG }) => wanted.eccentricityMm * massG);
  return {
    given,
    nominalGMm: norm(model.momentGMm),
    imbalanceGMm: distributionOf(imbalance),
    eccentricityMm: distributionOf(eccentricity),
    grade: grades && distributionOf(grades),
    massKg: distributionOf(parts.map(({ massG }) => massG / 1000)),
    expected: momentsOf(model, thickness, given.spread),
    causes: causesOf(model, thickness, given.spread),
    wanted,
    within: shareOf(eccentricity.filter((mm) => mm <= wanted.eccentricityMm).length, parts.length),
    byGrade: grades ? sharesByGrade(grades) : [],
    takeOffG: distributionOf(imbalance.map((gMm, i) => Math.max(0, gMm - (allowed[i] ?? 0)) / atRadiusMm)),
    atRadiusMm,
    stockMm: distributionOf(
      parts.map(({ momentGMm }, i) => stockNeededMm(reach, momentGMm, allowed[i] ?? 0)),
    ),
    histogram: histogramOf(grades ?? eccentricity),
  };
}

function wantedOf(analysis: Analysis, gradeMmPerS: number | null): ToleranceStudy["wanted"] {
  const radPerS = analysis.design.spin?.radPerS ?? 0;
  if (gradeMmPerS !== null) return { eccentricityMm: gradeMmPerS / radPerS, text: gradeName(gradeMmPerS) };
  const { neededMm, text } = neededBalance(analysis);
  return { eccentricityMm: neededMm, text };
}

/** From the finest grade that any part is within to the first that all are. */
function sharesByGrade(grades: readonly number[]): ToleranceStudy["byGrade"] {
  const shares = BALANCE_GRADES.map(({ name, mmPerS }) => ({
    name,
    gradeMmPerS: mmPerS,
    share: grades.filter((grade) => grade <= mmPerS).length / grades.length,
  }));
  const firstAll = shares.findIndex(({ share }) => share === 1);
  return shares.filter(({ share }, i) => share > 0 && (firstAll < 0 || i <= firstAll));
}
