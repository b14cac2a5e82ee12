import type { BitePoint, Place } from "../bite/bite.ts";
import { toCsv } from "./csv.ts";
import { strikeKey } from "./strike-place.ts";

/** A point of a bite curve, as far as the table tells it. */
export type BiteCsvPoint = Omit<BitePoint, "strikes"> & {
  readonly strikes: readonly { readonly place: Place; readonly share: number }[];
};

type Column = readonly [name: string, value: (point: BiteCsvPoint) => number | null];

/** The first five are the oldest; scripts may count on their order. */
const COLUMNS: readonly Column[] = [
  ["closing_m_per_s", ({ closingMPerS }) => closingMPerS],
  ["max_mm", ({ maxMm }) => maxMm],
  ["mean_mm", ({ meanMm }) => meanMm],
  ["square_share", ({ squareShare }) => squareShare],
  ["ideal_mm", ({ idealMm }) => idealMm],
  ["min_mm", ({ minMm }) => minMm],
  ["tenth_mm", ({ tenthMm }) => tenthMm],
  ["median_mm", ({ medianMm }) => medianMm],
  ["ninetieth_mm", ({ ninetiethMm }) => ninetiethMm],
  ["clean_share", ({ cleanShare }) => cleanShare],
  ["tooth_share", ({ toothShare }) => toothShare],
  ["passed_share", ({ passedShare }) => passedShare],
];

/**
 * A bite curve as comma-separated values by RFC 4180, with a header; an unknown value is an empty field, never 0.
 * Behind the figures comes the share of the strikes on each place that is struck at any of the speeds:
 * `share_segment_3` or `share_corner_3`, counted along the outline from 0, the corner at the end of the segment.
 * @throws RangeError for a number that is not finite
 */
export function toBiteCsv(curve: readonly BiteCsvPoint[]): string {
  const columns = [...COLUMNS, ...shareColumns(curve)];
  const header = columns.map(([name]) => name);
  return toCsv(
    header,
    curve.map((point) => columns.map(([, value]) => value(point))),
  );
}

function shareColumns(curve: readonly BiteCsvPoint[]): Column[] {
  const places = new Map<string, Place>();
  for (const { place } of curve.flatMap(({ strikes }) => strikes)) places.set(strikeKey(place), place);
  const order = ({ kind, index }: Place) => index + (kind === "corner" ? 0.5 : 0);
  return [...places]
    .sort(([, a], [, b]) => order(a) - order(b))
    .map(([key]) => [
      `share_${key}`,
      ({ strikes }) => strikes.find(({ place }) => strikeKey(place) === key)?.share ?? 0,
    ]);
}
