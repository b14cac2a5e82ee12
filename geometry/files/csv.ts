import { plainDecimal } from "./plain-decimal.ts";

/** RFC 4180, section 2: records end in CRLF, the last one too. */
const END_OF_RECORD = "\r\n";

/** A millionth of a µm, a share of a billionth: far below what anybody plots, and free of rounding noise. */
const DIGITS = 9;

/**
 * A table of numbers as comma-separated values by RFC 4180, with a header; an unknown value is an empty field, never 0.
 * @param header names without commas, quotes and line breaks
 * @throws RangeError for a number that is not finite
 */
export function toCsv(header: readonly string[], rows: readonly (readonly (number | null)[])[]): string {
  const records = rows.map((row) => row.map((field) => (field === null ? "" : plainDecimal(field, DIGITS))));
  return [header, ...records].map((fields) => fields.join(",") + END_OF_RECORD).join("");
}
