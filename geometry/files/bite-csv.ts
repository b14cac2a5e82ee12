import { plainDecimal } from "./plain-decimal.ts";

/** One closing speed of a bite curve. */
export interface BiteCsvPoint {
  readonly closingMPerS: number;
  readonly maxMm: number;
  readonly meanMm: number;
  /** From 0 to 1. */
  readonly squareShare: number;
  /** `null` where the bar has no countable teeth. */
  readonly idealMm: number | null;
}

const HEADER = ["closing_m_per_s", "max_mm", "mean_mm", "square_share", "ideal_mm"];

/** RFC 4180, section 2: records end in CRLF, the last one too. */
const END_OF_RECORD = "\r\n";

/** A millionth of a µm, a share of a billionth: far below what anybody plots, and free of rounding noise. */
const DIGITS = 9;

/**
 * A bite curve as comma-separated values by RFC 4180, with a header; an unknown value is an empty field, never 0.
 * @throws RangeError for a number that is not finite
 */
export function toBiteCsv(curve: readonly BiteCsvPoint[]): string {
  return [HEADER, ...curve.map(record)].map((fields) => fields.join(",") + END_OF_RECORD).join("");
}

function record(point: BiteCsvPoint): string[] {
  return [point.closingMPerS, point.maxMm, point.meanMm, point.squareShare, point.idealMm].map((value) =>
    value === null ? "" : plainDecimal(value, DIGITS),
  );
}
