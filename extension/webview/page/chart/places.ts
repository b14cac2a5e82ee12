/** Places of a chart in px, and reading along them. */

export interface Tick {
  /** In px. */
  readonly at: number;
  readonly text: string;
}

/** The room of a chart and its ticks, in px. */
export interface AxesModel {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
}

/** Room for the ticks and titles of the axes. */
export const CHART_MARGIN = { left: 46, right: 14, top: 14, bottom: 38 };

export type ChartPlace = readonly [x: number, y: number];

/** Straight from place to place: the points lie closer than any curve between them could show. */
export function polyline(places: readonly ChartPlace[]): string {
  const path = places.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join("L");
  return path === "" ? "" : `M${path}`;
}

/** The place nearest to one across the chart. */
export function nearestIndex(places: readonly number[], px: number): number {
  return places.reduce(
    (best, place, index) => (Math.abs(place - px) < Math.abs((places[best] ?? 0) - px) ? index : best),
    0,
  );
}

const FAR = 5;

/** Where a key of a slider leads, from one of so many places; `null` for any other key. */
export function readOn(key: string, here: number, count: number): number | null {
  const last = count - 1;
  const places: Readonly<Record<string, number>> = {
    ArrowRight: here + 1,
    ArrowUp: here + 1,
    ArrowLeft: here - 1,
    ArrowDown: here - 1,
    PageUp: here + FAR,
    PageDown: here - FAR,
    Home: 0,
    End: last,
  };
  const next = places[key];
  return next === undefined ? null : Math.min(last, Math.max(0, next));
}
