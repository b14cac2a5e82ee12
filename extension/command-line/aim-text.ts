/** What a search for the best bar came to, in a terminal: at most 80 columns. */
import { number, type Presented, presentMeasure, type UnitSystem } from "../../geometry/figures/present.ts";
import type { AimedBar, GoalStanding, LimitStanding } from "../../geometry/study/aim/aim.ts";
import { cautionsText } from "./cautions-text.ts";
import { paint } from "./paint.ts";
import { oneLine } from "./problem-line.ts";
import type { Terminal } from "./world.ts";
import { MOST_COLUMNS, wrap, wrapped } from "./wrap.ts";

export interface AimTextOptions {
  readonly title: string;
  readonly evaluations: number;
  readonly isStopped: boolean;
  readonly units: UnitSystem;
  readonly terminal: Terminal;
}

/** Lays the bars out: one for one goal, a table of them and what they share for two. */
export function aimText(bars: readonly AimedBar[], options: AimTextOptions): string {
  const [first] = bars;
  const { terminal } = options;
  if (first === undefined) return "";
  const body = bars.length === 1 ? barBlocks(first, options) : [lineTable(bars, options)];
  return `${[heading(options), ...body, cautionsText(terminal)].join("\n\n")}\n`;
}

function heading({ title, evaluations, isStopped, terminal }: AimTextOptions): string {
  const end = isStopped ? "stopped; the best so far" : "searched to the end";
  return [
    ...wrap(oneLine(title), "").map((line) => paint(line, "bold", terminal)),
    paint(`${evaluations} bars measured, ${end}`, "dim", terminal),
    paint("─".repeat(Math.min(terminal.columns, MOST_COLUMNS)), "dim", terminal),
  ].join("\n");
}

/** One bar: its goals, its values and how it stands to every limit. */
function barBlocks(bar: AimedBar, { units, terminal }: AimTextOptions): readonly string[] {
  const rows = [
    ...bar.goals.map((goal) => goalRow(goal, units)),
    ...bar.lets.map(({ name, from, to, reached }) => [
      name,
      from,
      to === from ? "as it is" : to,
      reached === null ? "" : `at its ${reached === "least" ? "lower" : "upper"} bound`,
    ]),
  ];
  const limits = bar.limits.map((limit) => limitRow(limit, units));
  return [
    table(["", "before", "after", ""], rows, terminal),
    ...(limits.length === 0 ? [] : [table(["limit", "", "is", "to spare", ""], limits, terminal)]),
  ];
}

function goalRow(
  { sense, label, measure, before, after }: GoalStanding,
  units: UnitSystem,
): readonly string[] {
  const share = before && after !== null ? 100 * (after / before - 1) : null;
  return [
    `${sense} ${label.toLowerCase()}`,
    shown(measure, before, units),
    shown(measure, after, units),
    share === null ? "" : `${share > 0 ? "+" : ""}${number(share, 3)} %`,
  ];
}

const ORIGINS: Readonly<Record<LimitStanding["origin"], string>> = {
  aim: "",
  require: "",
  expected: "expected",
};

function limitRow(
  { label, measure, relation, limit, value, margin, holds, isReached, origin }: LimitStanding,
  units: UnitSystem,
): readonly string[] {
  const note = holds ? (isReached ? "holds it back" : "") : "NOT KEPT";
  return [
    label,
    `${relation === "<=" ? "≤" : "≥"} ${shown(measure, limit, units)}`,
    shown(measure, value, units),
    shown(measure, margin, units),
    [ORIGINS[origin], note].filter(Boolean).join(", "),
  ];
}

function shown(measure: GoalStanding["measure"], value: number | null, units: UnitSystem): string {
  return joined(presentMeasure(measure, value, units));
}

function joined({ text, unit }: Presented): string {
  return unit === "" ? text : `${text} ${unit}`;
}

/** The bars of the line, a row each: what both goals are, and the values. */
function lineTable(bars: readonly AimedBar[], { units, terminal }: AimTextOptions): string {
  const [first] = bars;
  if (first === undefined) return "";
  const heads = [
    "",
    ...first.goals.map(({ sense, label }) => `${sense} ${label.toLowerCase()}`),
    ...first.lets.map(({ name }) => name),
  ];
  const rows = bars.map(({ goals, lets }, i) => [
    `${i + 1}`,
    ...goals.map(({ measure, after }) => shown(measure, after, units)),
    ...lets.map(({ to }) => to),
  ]);
  const now = [
    "now",
    ...first.goals.map(({ measure, before }) => shown(measure, before, units)),
    ...first.lets.map(({ from }) => from),
  ];
  const reached = first.limits.filter((_, i) => bars.some(({ limits }) => limits[i]?.isReached));
  const held = reached.map(
    ({ label, measure, relation, limit }) =>
      `${label} ${relation === "<=" ? "≤" : "≥"} ${shown(measure, limit, units)}`,
  );
  return [
    table(heads, [...rows, now], terminal),
    ...(held.length === 0 ? [] : ["", ...wrap(`Held back, all or some, by ${held.join(", ")}.`, "  ")]),
  ].join("\n");
}

const GAP = 2;

/** Titles are broken at spaces to this width, or that of what stands below. */
const TITLE_WIDTH = 10;

/** Columns as wide as what stands in them; where that is too wide for the page, a row goes on on the next line. */
function table(heads: readonly string[], rows: readonly (readonly string[])[], terminal: Terminal): string {
  const below = heads.map((_, column) => Math.max(0, ...rows.map((cells) => (cells[column] ?? "").length)));
  const titles = heads.map((head, column) => wrapped(head, Math.max(TITLE_WIDTH, below[column] ?? 0)));
  const height = Math.max(...titles.map((lines) => lines.length));
  const headRows = Array.from({ length: height }, (_, line) =>
    titles.map((lines) => lines[lines.length - height + line] ?? ""),
  );
  const widths = titles.map(
    (lines, column) => Math.max(below[column] ?? 0, ...lines.map((line) => line.length)) + GAP,
  );
  return [
    ...headRows.map((cells) => paint(rowText(cells, widths), "dim", terminal)),
    ...rows.map((cells) => coloured(rowText(cells.map(oneLine), widths), terminal)),
  ].join("\n");
}

const INDENT = "  ";

function rowText(cells: readonly string[], widths: readonly number[]): string {
  const lines: string[] = [];
  let line = INDENT;
  for (const [column, cell] of cells.entries()) {
    const width = widths[column] ?? 0;
    if (column > 1 && line.length + cell.length > MOST_COLUMNS) {
      lines.push(line.trimEnd());
      line = INDENT + " ".repeat(widths[0] ?? 0);
    }
    line += cell.padEnd(width);
  }
  return [...lines, line.trimEnd()].join("\n");
}

function coloured(text: string, terminal: Terminal): string {
  return text
    .replace("NOT KEPT", (found) => paint(found, "red", terminal))
    .replace("holds it back", (found) => paint(found, "yellow", terminal));
}
