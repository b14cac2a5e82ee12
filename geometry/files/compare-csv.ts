import type { FigureValue } from "../figures/figure.ts";
import type { Comparison, FigureRow } from "../study/compare/compare.ts";
import { type CsvField, toCsv } from "./csv.ts";

/**
 * A comparison as comma-separated values: a record for each number of each figure, named by its key with its unit, and
 * for each bar its value and, behind all values, the difference from the first bar's and the same in per cent.
 * @param titles of the bars, the reference first
 */
export function toCompareCsv({ figures }: Pick<Comparison, "figures">, titles: readonly string[]): string {
  const others = titles.slice(1);
  const header = [
    "figure",
    // With words before them no title can begin as a formula does.
    ...titles.map((title) => `value: ${title}`),
    ...others.flatMap((title) => [`difference: ${title}`, `percent: ${title}`]),
  ];
  return toCsv(header, figures.flatMap(recordsOf));
}

function recordsOf({ key, cells }: FigureRow): CsvField[][] {
  const parts = partNames(cells.map(({ value }) => value));
  return parts.map((part) => [
    part === "" ? key : `${key}.${part}`,
    ...cells.map(({ value }) => fieldOf(value, part)),
    ...cells.slice(1).flatMap(({ difference, percent }) => [fieldOf(difference, part), percent]),
  ]);
}

/** The names of the numbers in values of several; one empty name for values of one. */
function partNames(values: readonly FigureValue[]): string[] {
  const names = values.flatMap((value) =>
    typeof value === "object" && value !== null ? Object.keys(value) : [],
  );
  return names.length > 0 ? [...new Set(names)] : [""];
}

function fieldOf(value: FigureValue, part: string): CsvField {
  if (typeof value !== "object" || value === null) return part === "" ? value : null;
  const inner = Object.entries<FigureValue>(value).find(([name]) => name === part)?.[1];
  return typeof inner === "number" || typeof inner === "string" ? inner : null;
}
