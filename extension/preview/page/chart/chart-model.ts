/** The bite curve as lines and ticks in px. */
import { scaleLinear } from "d3-scale";
import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import {
  CHART_MARGIN,
  type ChartPlace,
  nearestIndex,
  polyline,
  type Tick,
} from "../../../webview/page/chart/places.ts";
import { mmPerUnit, mPerSPerUnit } from "../../../webview/page/units.ts";
import type { BitePoint, ShownBite } from "../../protocol.ts";
import type { Size } from "../viewport.ts";

export type CurveName = "deepest" | "mean" | "ideal";
export const CURVE_NAMES: readonly CurveName[] = ["deepest", "mean", "ideal"];

export interface ChartModel {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly speedTicks: readonly Tick[];
  readonly depthTicks: readonly Tick[];
  readonly curves: Readonly<Record<CurveName, string>>;
  /** Around eight strikes in ten. */
  readonly band: string;
  /** Where the clean-bite speed stands; `null` outside the speeds studied. */
  readonly cleanAt: number | null;
  /** Where something else than teeth begins to strike; `null` outside the speeds studied, or at the clean speed. */
  readonly teethOnlyAt: number | null;
  xOf(point: BitePoint): number;
  yOf(depthMm: number): number;
  /** The point of the curve nearest to a place across the chart. */
  nearest(x: number): number;
}

export function depthOf(point: BitePoint, curve: CurveName): number | null {
  if (curve === "deepest") return point.maxMm;
  return curve === "mean" ? point.meanMm : point.idealMm;
}

/** Lay out a curve of at least one point. */
export function chartModel(
  { curve, cleanMPerS, teethOnlyMPerS }: ShownBite,
  units: UnitSystem,
  { width, height }: Size,
): ChartModel {
  const [left, right] = [CHART_MARGIN.left, Math.max(width - CHART_MARGIN.right, CHART_MARGIN.left + 10)];
  const [top, bottom] = [CHART_MARGIN.top, height - CHART_MARGIN.bottom];
  const speeds = curve.map(({ closingMPerS }) => closingMPerS / mPerSPerUnit(units));
  const depths = curve.flatMap((point) => CURVE_NAMES.map((name) => depthOf(point, name) ?? 0));
  const x = scaleLinear([Math.min(...speeds), Math.max(...speeds)], [left, right]);
  const deepest = Math.max(...depths, 0) / mmPerUnit(units);
  const y = scaleLinear([0, deepest > 0 ? deepest : 1], [bottom, top]).nice(5);
  const xOf = (point: BitePoint) => x(point.closingMPerS / mPerSPerUnit(units));
  const yOf = (depthMm: number) => y(depthMm / mmPerUnit(units));
  const pathOf = (name: CurveName) => {
    const known = curve.filter((point) => depthOf(point, name) !== null);
    return polyline(known.map((point) => [xOf(point), yOf(depthOf(point, name) ?? 0)]));
  };
  const upper = curve.map((point): ChartPlace => [xOf(point), yOf(point.ninetiethMm)]);
  const lower = curve.map((point): ChartPlace => [xOf(point), yOf(point.tenthMm)]);
  const speedCount = Math.max(3, (right - left) / 60);
  const [speedFormat, depthFormat] = [x.tickFormat(speedCount), y.tickFormat(5)];
  const [slowest = 0, fastest = 0] = x.domain();
  const atSpeed = (mPerS: number | null) => {
    const speed = mPerS === null ? null : mPerS / mPerSPerUnit(units);
    return speed === null || speed < slowest || speed > fastest ? null : x(speed);
  };
  return {
    left,
    right,
    top,
    bottom,
    speedTicks: x.ticks(speedCount).map((at) => ({ at: x(at), text: speedFormat(at) })),
    depthTicks: y.ticks(5).map((at) => ({ at: y(at), text: depthFormat(at) })),
    curves: { deepest: pathOf("deepest"), mean: pathOf("mean"), ideal: pathOf("ideal") },
    band: `${polyline([...upper, ...lower.reverse()])}Z`,
    cleanAt: atSpeed(cleanMPerS),
    teethOnlyAt: sameSpeed(cleanMPerS, teethOnlyMPerS) ? null : atSpeed(teethOnlyMPerS),
    xOf,
    yOf,
    nearest: (px) => nearestIndex(curve.map(xOf), px),
  };
}

/** Two speeds this near are written alike, and their marks would stand on each other. */
const SAME_SPEED = 1e-3;

/** Whether two limits are one to the eye. */
export function sameSpeed(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return a === b;
  return Math.abs(a - b) <= SAME_SPEED * Math.max(a, b);
}
