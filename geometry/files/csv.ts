import { plainDecimal } from "./plain-decimal.ts";

/** RFC 4180, section 2: records end in CRLF, the last one too. */
const END_OF_RECORD = "\r\n";

/** A millionth of a µm, a share of a billionth: far below what anybody plots, and free of rounding noise. */
const DIGITS = 9;

/** What a field may hold; `null` is not known. */
export type CsvField = number | string | null;

/**
 * A table as comma-separated values by RFC 4180, with a header; an unknown value is an empty field, never 0.
 * @throws RangeError for a number that is not finite
 */
export function toCsv(header: readonly string[], rows: readonly (readonly CsvField[])[]): string {
  return [header, ...rows].map((fields) => fields.map(fieldText).join(",") + END_OF_RECORD).join("");
}

function fieldText(field: CsvField): string {
  if (field === null) return "";
  if (typeof field === "number") return plainDecimal(field, DIGITS);
  // RFC 4180, section 2, 6 and 7: quoted where it must be, quotes within doubled.
  return /[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}
