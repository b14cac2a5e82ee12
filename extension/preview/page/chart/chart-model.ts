/** The bite curve as lines and ticks in px. */
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import type { BitePoint, View } from "../../protocol.ts";
import { mmPerUnit, mPerSPerUnit } from "../units.ts";
import type { Size } from "../viewport.ts";

export type CurveName = "deepest" | "mean" | "ideal";
export const CURVE_NAMES: readonly CurveName[] = ["deepest", "mean", "ideal"];

export interface Tick {
  readonly at: number;
  readonly text: string;
}

export interface ChartModel {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly speedTicks: readonly Tick[];
  readonly depthTicks: readonly Tick[];
  readonly curves: Readonly<Record<CurveName, string>>;
  /** Where the clean-bite speed stands; `null` outside the speeds studied. */
  readonly cleanAt: number | null;
  xOf(point: BitePoint): number;
  yOf(depthMm: number): number;
  /** The point of the curve nearest to a place across the chart. */
  nearest(x: number): number;
}

const MARGIN = { left: 46, right: 14, top: 14, bottom: 38 };

export function depthOf(point: BitePoint, curve: CurveName): number | null {
  if (curve === "deepest") return point.maxMm;
  return curve === "mean" ? point.meanMm : point.idealMm;
}

/** Lay out a curve of at least one point. */
export function chartModel(
  { curve, cleanMPerS }: NonNullable<View["bite"]>,
  units: UnitSystem,
  { width, height }: Size,
): ChartModel {
  const [left, right] = [MARGIN.left, Math.max(width - MARGIN.right, MARGIN.left + 10)];
  const [top, bottom] = [MARGIN.top, height - MARGIN.bottom];
  const speeds = curve.map(({ closingMPerS }) => closingMPerS / mPerSPerUnit(units));
  const depths = curve.flatMap((point) => CURVE_NAMES.map((name) => depthOf(point, name) ?? 0));
  const x = scaleLinear([Math.min(...speeds), Math.max(...speeds)], [left, right]);
  const deepest = Math.max(...depths, 0) / mmPerUnit(units);
  const y = scaleLinear([0, deepest > 0 ? deepest : 1], [bottom, top]).nice(5);
  const xOf = (point: BitePoint) => x(point.closingMPerS / mPerSPerUnit(units));
  const yOf = (depthMm: number) => y(depthMm / mmPerUnit(units));
  const pathOf = (name: CurveName) =>
    line<BitePoint>(xOf, (point) => yOf(depthOf(point, name) ?? 0)).defined(
      (point) => depthOf(point, name) !== null,
    )(curve) ?? "";
  const [speedFormat, depthFormat] = [x.tickFormat(6), y.tickFormat(5)];
  const clean = cleanMPerS === null ? null : cleanMPerS / mPerSPerUnit(units);
  const [slowest = 0, fastest = 0] = x.domain();
  return {
    left,
    right,
    top,
    bottom,
    speedTicks: x.ticks(Math.max(3, (right - left) / 60)).map((at) => ({ at: x(at), text: speedFormat(at) })),
    depthTicks: y.ticks(5).map((at) => ({ at: y(at), text: depthFormat(at) })),
    curves: { deepest: pathOf("deepest"), mean: pathOf("mean"), ideal: pathOf("ideal") },
    cleanAt: clean === null || clean < slowest || clean > fastest ? null : x(clean),
    xOf,
    yOf,
    nearest: (px) => nearestIndex(curve.map(xOf), px),
  };
}

function nearestIndex(places: readonly number[], px: number): number {
  return places.reduce(
    (best, place, index) => (Math.abs(place - px) < Math.abs((places[best] ?? 0) - px) ? index : best),
    0,
  );
}
