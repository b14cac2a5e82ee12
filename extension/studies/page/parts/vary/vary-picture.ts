/** A finished sweep as lines of a chart and as a table. */
import { number, type UnitSystem, unitOf } from "../../../../../geometry/figures/present.ts";
import { fill } from "../../../../webview/fill.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { VaryResult } from "../../../worker/vary-job.ts";
import type { LineChartData } from "../../chart/line-chart-model.ts";

/** More lines than this are not told apart. */
const MOST_LINES = 7;
const DIGITS = 5;

/** What is shown: a line for the one let, or for some values of the second. */
export interface VaryPicture {
  readonly chart: LineChartData;
  readonly figure: string;
  readonly columns: readonly string[];
  /** Title of the row and its cells, one a line; kept requirements are marked. */
  readonly rows: readonly (readonly string[])[];
}

export function varyPicture(
  result: VaryResult,
  units: UnitSystem,
  strings: StudiesStrings,
): VaryPicture | null {
  const [along, second] = result.lets;
  const [figure] = result.figures;
  if (!along || !figure) return null;
  const { perUnit, unit } =
    figure.measure === "grade" ? { perUnit: 1, unit: "G" } : unitOf(figure.measure, units);
  const each = second?.values.length ?? 1;
  const shown = evenly(each, MOST_LINES);
  const titled = (name: string, of: string | null) => (of === null || of === "" ? name : `${name}, ${of}`);
  const lines = shown.map((k) => ({
    name: second ? `${second.name} = ${valueText(second.values[k] ?? 0, second.unit)}` : figure.label,
    rows: along.values.map((_, i) => result.rows[i * each + k]),
  }));
  const shownValue = (value: number | null | undefined) =>
    value === null || value === undefined ? null : value / perUnit;
  const title = titled(figure.label, unit);
  return {
    figure: title,
    chart: {
      x: { title: titled(along.name, along.unit), values: along.values },
      y: { title, fromZero: false },
      series: lines.map(({ name, rows }, style) => ({
        name,
        style,
        values: rows.map((row) => shownValue(row?.figures[0])),
      })),
    },
    columns: [titled(along.name, along.unit), ...(second ? lines.map(({ name }) => name) : [title])],
    rows: along.values.map((value, i) => [
      number(value, DIGITS),
      ...lines.map(({ rows }) => cellText(rows[i], shownValue(rows[i]?.figures[0]), strings)),
    ]),
  };
}

function cellText(
  row: VaryResult["rows"][number] | undefined,
  value: number | null,
  strings: StudiesStrings,
): string {
  if (!row?.isSound) return strings.varyNoPlate;
  const text = value === null ? "–" : number(value, DIGITS);
  return row.keepsRequirements ? `${text} ✓` : text;
}

/** The values at one place of the chart, in words. */
export function toldAt({ x, series }: LineChartData, index: number, strings: StudiesStrings): string {
  const values = series.map(({ name, values: found }) => {
    const value = found[index] ?? null;
    return fill(strings.readValue, name, value === null ? "–" : number(value, DIGITS));
  });
  return fill(strings.readAt, `${x.title} ${number(x.values[index] ?? 0, DIGITS)}`, values.join("; "));
}

function valueText(value: number, unit: string | null): string {
  return `${number(value, DIGITS)}${unit === null ? "" : ` ${unit}`}`;
}

/** Places of a list, its ends among them, no more than so many. */
function evenly(count: number, most: number): readonly number[] {
  if (count <= most) return Array.from({ length: count }, (_, i) => i);
  return Array.from({ length: most }, (_, i) => Math.round((i * (count - 1)) / (most - 1)));
}
