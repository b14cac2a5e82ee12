/**
 * Balance by drilling: where on the heavy side to drill, how many holes of which drill and how deep, so that what is
 * left is within a grade. Static moments are exact: a round hole's metal has its centroid on the hole's axis, whatever
 * its depth. Source: equilibrium of static moments, Σm·r = U.
 */
import type { Analysis } from "../../analysis/analyse.ts";
import { isObstacle } from "../../analysis/judgements.ts";
import { gradeName } from "../../figures/balance.ts";
import { number } from "../../figures/present.ts";
import type { Point } from "../../language/design.ts";
import { norm, times } from "../../outline/vector.ts";
import { neededBalance } from "../needed-balance.ts";
import type { DrillSize } from "./drill-sizes.ts";
import { INCH_DRILLS, METRIC_DRILLS } from "./drill-sizes.ts";
import { blindOptions, type HoleOption, type Plate, throughOptions } from "./hole-options.ts";
import { metalOf } from "./metal.ts";
import type { SeekTask } from "./picks.ts";
import { netStepMm, spotsOf } from "./places.ts";
import {
  DEFAULT_FLOOR_SHARE,
  DEFAULT_MOST_HOLES,
  type DrillAim,
  type DrillFailure,
  type Drilling,
  type DrillRequest,
  type HeavySpot,
} from "./request.ts";
import { seekHoles } from "./seek-holes.ts";
import { shopSteps, speaksInches } from "./shop-steps.ts";
import { type Bar, barAsItIs, drillingOf } from "./state.ts";

export type DrillResult =
  | {
      readonly solved: true;
      readonly before: Drilling;
      readonly aim: DrillAim;
      /** No hole where the bar is within the grade as it is. */
      readonly drilling: Drilling;
    }
  | {
      readonly solved: false;
      readonly reason: DrillFailure;
      /** A sentence or two for people. */
      readonly message: string;
      readonly before: Drilling | null;
      readonly aim: DrillAim | null;
      /** The nearest that was found; `null` where nothing was. */
      readonly nearest: Drilling | null;
    };

/** Finds holes that balance the bar. Never throws for what a text or a request may say. */
export function drillToBalance(analysis: Analysis, request: DrillRequest = {}): DrillResult {
  const { outline, assessment, design } = analysis;
  const { mass, section, settings } = assessment;
  const obstacle = analysis.problems.find(isObstacle);
  if (obstacle) return refusal("file-has-errors", `Mend the file's errors first: ${obstacle.message}`);
  const thickness = design.thicknessMm;
  if (!outline || !section?.centroidMm || !thickness)
    return refusal("file-has-errors", "There is no bar to drill.");
  if (!mass || design.densityKgPerM3 === null)
    return refusal("no-density", "What a hole takes off needs a material or a density.");
  const aim = aimOf(analysis, request.gradeMmPerS ?? null);
  if (!aim) return refusal("no-spin", "A balance grade needs a spin: the file has none.");
  const load = loadOf(analysis, request.measured ?? null);
  const bar: Bar = {
    load,
    massG: mass.massKg * 1000,
    inertiaKgM2: mass.inertiaKgM2,
    radPerS: design.spin?.radPerS ?? null,
    thicknessMm: thickness.value,
    gPerMm3: design.densityKgPerM3 * 1e-6,
    stepMm: shopSteps(speaksInches(analysis)).lengthMm,
  };
  const before = barAsItIs(bar);
  if (norm(load) <= aim.neededGMm) return { solved: true, before, aim, drilling: before };
  const plate: Plate = { ...bar, bridgeMm: settings.leastBridgeToThickness * thickness.value };
  const options = optionsOf(analysis, request, plate, bar.stepMm);
  const task = seekTask(analysis, request, bar, plate, options);
  if (!task)
    return {
      ...refusal("no-drill-fits", noDrillText(request, options)),
      before,
      aim,
    };
  const { picks, isEnough } = seekHoles(task);
  const found = drillingOf(bar, picks);
  if (isEnough) return { solved: true, before, aim, drilling: found };
  const nearest = picks.length > 0 ? found : null;
  return {
    solved: false,
    reason: "out-of-reach",
    message: reachText(before, nearest, aim, task),
    before,
    aim,
    nearest,
  };
}

function refusal(reason: DrillFailure, message: string) {
  return { solved: false, reason, message, before: null, aim: null, nearest: null } as const;
}

/** Of rotors in general (ISO 21940-11): finer is sought no further. */
const AIMED_GRADE = 6.3;

function aimOf(analysis: Analysis, grade: number | null): (DrillAim & { readonly aimMm: number }) | null {
  const massG = (analysis.assessment.mass?.massKg ?? 0) * 1000;
  const radPerS = analysis.design.spin?.radPerS ?? 0;
  if (grade === null) {
    const { neededMm, aimMm, text } = neededBalance(analysis);
    return { neededMm, aimMm, neededGMm: neededMm * massG, text };
  }
  if (radPerS === 0) return null;
  const neededMm = grade / radPerS;
  const aimMm = Math.min(neededMm, AIMED_GRADE / radPerS);
  return { neededMm, aimMm, neededGMm: neededMm * massG, text: gradeName(grade) };
}

/** What is to be taken away: measured, or of the outline. */
function loadOf({ assessment }: Analysis, measured: HeavySpot | null): Point {
  if (measured) {
    const angleRad = ((measured.angleDeg ?? 0) * Math.PI) / 180;
    return times({ x: Math.cos(angleRad), y: Math.sin(angleRad) }, measured.imbalanceGMm);
  }
  const { mass, section } = assessment;
  return times(section?.centroidMm ?? { x: 0, y: 0 }, (mass?.massKg ?? 0) * 1000);
}

function optionsOf(
  analysis: Analysis,
  request: DrillRequest,
  plate: Plate,
  stepMm: number,
): readonly HoleOption[] {
  const usual = speaksInches(analysis) ? INCH_DRILLS : METRIC_DRILLS;
  if (!request.through) {
    const floorMm = request.floorMm ?? DEFAULT_FLOOR_SHARE * plate.thicknessMm;
    return byThickness(blindOptions(request.drills ?? usual, plate, floorMm, stepMm));
  }
  const leastMm = analysis.assessment.settings.leastHoleToThickness * plate.thicknessMm;
  const isInFile = !request.measured;
  return byThickness(throughOptions(request.drills ?? (isInFile ? cuttable(usual, leastMm) : usual), plate));
}

function byThickness(options: readonly HoleOption[]): readonly HoleOption[] {
  return [...options].sort((a, b) => a.roomMm - b.roomMm);
}

/** A through hole that stands in the file is cut with the outline: none smaller than the checker lets pass. */
function cuttable(usual: readonly DrillSize[], leastMm: number): readonly DrillSize[] {
  return usual.filter(({ diameterMm }) => diameterMm >= leastMm * (1 - 1e-9));
}

function seekTask(
  analysis: Analysis,
  request: DrillRequest,
  bar: Bar,
  plate: Plate,
  options: readonly HoleOption[],
): SeekTask | null {
  const { outline } = analysis;
  const { section } = analysis.assessment;
  const aim = aimOf(analysis, request.gradeMmPerS ?? null);
  if (!outline || !section || !aim || options.length === 0) return null;
  const metal = metalOf(outline);
  const { stepMm, load } = bar;
  const rooms = options.map(({ roomMm }) => roomMm);
  const window = request.window ?? {};
  const netMm = netStepMm(section.areaMm2, metal.segments);
  const spots = spotsOf(metal, {
    maxRadiusMm: section.maxRadiusMm,
    netMm,
    stepMm,
    leastRoomMm: Math.min(...rooms),
    mostRoomMm: Math.max(...rooms),
    window,
  });
  if (spots.length === 0) return null;
  return {
    load,
    massG: bar.massG,
    aimMm: aim.aimMm,
    neededMm: aim.neededMm,
    options,
    spots,
    netMm,
    stepMm,
    metal,
    bridgeMm: plate.bridgeMm,
    window,
    mostHoles: request.mostHoles ?? DEFAULT_MOST_HOLES,
  };
}

function noDrillText(request: DrillRequest, options: readonly HoleOption[]): string {
  if (options.length === 0)
    return request.through
      ? "No drill at hand is as wide as the plate is thick, which a hole in the file has to be; name drills to use smaller ones."
      : "No drill at hand can go in blind and leave that floor: the plate is too thin for their points.";
  return "No drill at hand has room with the least bridge to every edge and hole.";
}

function reachText(before: Drilling, nearest: Drilling | null, aim: DrillAim, task: SeekTask): string {
  const from = stateText(before);
  if (!nearest) return `No hole brings the bar nearer than it is, ${from}; ${aim.text} is wanted.`;
  const { length } = nearest.holes;
  const holes = `${length} ${length === 1 ? "hole" : "holes"}`;
  const limit =
    length === task.mostHoles ? "more holes than that were not tried" : "there is no room for more";
  return `The nearest found is ${stateText(nearest)} with ${holes}, from ${from}; ${aim.text} is wanted, and ${limit}.`;
}

function stateText({ after }: Drilling): string {
  const grade = after.gradeMmPerS === null ? "" : `G${number(after.gradeMmPerS, 3)}, `;
  return `${grade}${number(after.imbalanceGMm, 4)} g·mm`;
}
