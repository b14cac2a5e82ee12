/** Bars by two figures, one across and one up, as places and ticks in px. */
import { scaleLinear } from "d3-scale";
import { type AxesModel, CHART_MARGIN, type ChartPlace } from "../../../webview/page/chart/places.ts";
import type { Size } from "../../../webview/page/size.ts";

export interface FrontChartData {
  readonly xTitle: string;
  readonly yTitle: string;
  /** In the shown units, in the order in which they are read. */
  readonly points: readonly (readonly [x: number, y: number])[];
  /** The bar as it is; `null` where it is not known. */
  readonly now: readonly [x: number, y: number] | null;
}

export interface FrontChartModel extends AxesModel {
  readonly places: readonly ChartPlace[];
  readonly now: ChartPlace | null;
  /** The point nearest to a place of the chart. */
  nearest(x: number, y: number): number;
}

/** Room around the points, as a share of what they span. */
const ROOM = 0.06;

export function frontChartModel(data: FrontChartData, { width, height }: Size): FrontChartModel {
  const { points, now } = data;
  const all = now ? [...points, now] : points;
  const [left, right] = [CHART_MARGIN.left + 8, Math.max(width - CHART_MARGIN.right, CHART_MARGIN.left + 20)];
  const [top, bottom] = [CHART_MARGIN.top, height - CHART_MARGIN.bottom];
  const across = scaleLinear(widened(all.map(([x]) => x)), [left, right]);
  const up = scaleLinear(widened(all.map(([, y]) => y)), [bottom, top]);
  const xCount = Math.max(3, (right - left) / 70);
  const [xFormat, yFormat] = [across.tickFormat(xCount), up.tickFormat(5)];
  const placeOf = ([x, y]: readonly [number, number]): ChartPlace => [across(x), up(y)];
  const places = points.map(placeOf);
  return {
    left,
    right,
    top,
    bottom,
    xTicks: across.ticks(xCount).map((at) => ({ at: across(at), text: xFormat(at) })),
    yTicks: up.ticks(5).map((at) => ({ at: up(at), text: yFormat(at) })),
    places,
    now: now && placeOf(now),
    nearest: (x, y) => {
      const distances = places.map(([px, py]) => Math.hypot(px - x, py - y));
      return distances.indexOf(Math.min(...distances));
    },
  };
}

function widened(values: readonly number[]): [number, number] {
  const [least, most] = values.length === 0 ? [0, 1] : [Math.min(...values), Math.max(...values)];
  const room = (most - least || Math.abs(most) || 1) * ROOM;
  return [least - room, most + room];
}
