/** Lines over a common axis as paths and ticks in px. */
import { scaleLinear } from "d3-scale";
import {
  type AxesModel,
  CHART_MARGIN,
  type ChartPlace,
  nearestIndex,
  polyline,
} from "../../../webview/page/chart/places.ts";
import type { Size } from "../../../webview/page/size.ts";

/** One line of a chart. */
export interface ChartSeries {
  readonly name: string;
  /** Which of the styles of lines it has, from 0. */
  readonly style: number;
  /** One for each place of the axis, in the shown unit; `null` where there is none: the line has a gap. */
  readonly values: readonly (number | null)[];
}

export interface LineChartData {
  readonly x: { readonly title: string; readonly values: readonly number[] };
  readonly y: { readonly title: string; readonly fromZero: boolean };
  readonly series: readonly ChartSeries[];
}

export interface LineChartModel extends AxesModel {
  /** A path for each series. */
  readonly paths: readonly string[];
  /** Across the chart, a place for each value of the axis. */
  readonly xPlaces: readonly number[];
  yOf(value: number): number;
  /** The value of the axis nearest to a place across the chart. */
  nearest(px: number): number;
}

/** Lay a chart of at least one place out. */
export function lineChartModel({ x, y, series }: LineChartData, { width, height }: Size): LineChartModel {
  const [left, right] = [CHART_MARGIN.left, Math.max(width - CHART_MARGIN.right, CHART_MARGIN.left + 10)];
  const [top, bottom] = [CHART_MARGIN.top, height - CHART_MARGIN.bottom];
  const across = scaleLinear(widened(extentOf(x.values)), [left, right]);
  const values = series.flatMap((one) => one.values.filter((value) => value !== null));
  const [least, most] = widened(extentOf(y.fromZero ? [0, ...values] : values));
  const up = scaleLinear([least, most], [bottom, top]).nice(5);
  const xPlaces = x.values.map((value) => across(value));
  const xCount = Math.max(3, (right - left) / 60);
  const [xFormat, yFormat] = [across.tickFormat(xCount), up.tickFormat(5)];
  return {
    left,
    right,
    top,
    bottom,
    xTicks: across.ticks(xCount).map((at) => ({ at: across(at), text: xFormat(at) })),
    yTicks: up.ticks(5).map((at) => ({ at: up(at), text: yFormat(at) })),
    paths: series.map((one) => runsOf(one.values, xPlaces, up).map(polyline).join("")),
    xPlaces,
    yOf: (value) => up(value),
    nearest: (px) => nearestIndex(xPlaces, px),
  };
}

/** The stretches of a line between its gaps. */
function runsOf(
  values: readonly (number | null)[],
  xPlaces: readonly number[],
  up: (value: number) => number,
): ChartPlace[][] {
  const runs: ChartPlace[][] = [[]];
  for (const [i, value] of values.entries()) {
    if (value === null) runs.push([]);
    else runs.at(-1)?.push([xPlaces[i] ?? 0, up(value)]);
  }
  return runs;
}

function extentOf(values: readonly number[]): [number, number] {
  return values.length === 0 ? [0, 1] : [Math.min(...values), Math.max(...values)];
}

/** A chart of one value has room around it. */
function widened([least, most]: [number, number]): [number, number] {
  if (least < most) return [least, most];
  const room = Math.abs(least) > 0 ? Math.abs(least) / 10 : 1;
  return [least - room, most + room];
}
