/** A sweep in a terminal: at most 80 columns. One let has a table of all figures, two lets a grid of the first. */
import { number, type UnitSystem, unitOf } from "../../geometry/figures/present.ts";
import type { MovableLet } from "../../geometry/study/movable-let.ts";
import type { StudiedFigure } from "../../geometry/study/sweep/studied-figure.ts";
import type { Study } from "../../geometry/study/sweep/study.ts";
import type { SweepRow } from "../../geometry/study/sweep/sweep.ts";
import { cautionsText } from "./cautions-text.ts";
import { paint } from "./paint.ts";
import { oneLine } from "./problem-line.ts";
import { shareBar } from "./share-bar.ts";
import type { Terminal } from "./world.ts";
import { MOST_COLUMNS, wrapped } from "./wrap.ts";

const CELL = 11;
const BAR = 12;
/** Beside the let and the bar. */
const PER_BLOCK = Math.floor((MOST_COLUMNS - CELL - BAR - 2) / CELL);
/** Digits that tell neighbours of a sweep apart. */
const DIGITS = 5;
const UNSOUND = "no plate";
const KEPT = "✓";

/** Lay a finished sweep out for a terminal. */
export function sweepText(
  study: Study,
  rows: readonly SweepRow[],
  system: UnitSystem,
  terminal: Terminal,
): string {
  const { variation, axes } = study;
  const { design, variant } = variation.start;
  const name = oneLine([design.name ?? "Unnamed bar", variant].filter(Boolean).join(" – "));
  const ranges = variation.lets.map((of, i) => {
    const { from = 0, to = 0 } = axes[i] ?? {};
    return `${of.name} from ${valueText(of, from)} to ${valueText(of, to)}`;
  });
  const title = [paint(name, "bold", terminal), `${ranges.join(", ")}; now ${nowText(variation.lets)}`];
  const tables =
    variation.lets.length === 1
      ? listOf(study, rows, system, terminal)
      : gridOf(study, rows, system, terminal);
  const legend = rows.some((row) => row.keepsRequirements)
    ? ["", `${KEPT} keeps the requirements of the file`]
    : [];
  return `${[...title, "", ...tables, ...legend, "", cautionsText(terminal)].join("\n")}\n`;
}

function valueText({ unit }: MovableLet, value: number): string {
  return `${number(value, DIGITS)}${unit === null ? "" : ` ${unit}`}`;
}

function nowText(lets: readonly MovableLet[]): string {
  return lets.map((of) => valueText(of, of.value)).join(", ");
}

/** A row a value; behind it the first figure of the block as a bar from its least to its greatest. */
function listOf(
  { variation, figures }: Study,
  rows: readonly SweepRow[],
  system: UnitSystem,
  terminal: Terminal,
): string[] {
  const [of] = variation.lets;
  const lines: string[] = [];
  for (let from = 0; from < figures.length; from += PER_BLOCK) {
    const block = figures.slice(from, from + PER_BLOCK);
    const shares = sharesOf(rows.map((row) => row.figures[from] ?? null));
    const titles = [
      of?.unit ? `${of.name} ${of.unit}` : (of?.name ?? ""),
      ...block.map((one) => titleOf(one, system)),
    ];
    if (from > 0) lines.push("");
    lines.push(...headOf(titles).map((line) => paint(line, "dim", terminal)));
    rows.forEach((row, i) => {
      const cells = padded([
        firstCell(row),
        ...(row.isSound
          ? block.map((figure, j) => cellText(figure, row.figures[from + j] ?? null, system))
          : [UNSOUND]),
      ]);
      const bar = paint(barOf(shares[i] ?? null), "cyan", terminal);
      lines.push(`${cells.padEnd(CELL * (block.length + 1))}  ${bar}`.trimEnd());
    });
  }
  return lines;
}

/** The value of the let, marked where the bar keeps its requirements. */
function firstCell({ values, keepsRequirements }: SweepRow): string {
  return `${keepsRequirements ? `${KEPT} ` : ""}${number(values[0] ?? 0, DIGITS)}`;
}

/** The first figure over both lets, in blocks of columns where there are too many. */
function gridOf(
  { variation, axes, figures }: Study,
  rows: readonly SweepRow[],
  system: UnitSystem,
  terminal: Terminal,
): string[] {
  const [down, across] = variation.lets;
  const [figure] = figures;
  if (!down || !across || !figure) return [];
  const columns = axes[1]?.count ?? 0;
  const perBlock = Math.floor((MOST_COLUMNS - CELL) / CELL);
  const about = `${titleOf(figure, system)}: ${down.name} down, ${across.name} across`;
  const lines: string[] = [paint(about, "bold", terminal)];
  for (let from = 0; from < columns; from += perBlock) {
    const block = rows.slice(from, Math.min(from + perBlock, columns));
    const head = ["", ...block.map(({ values }) => number(values[1] ?? 0, DIGITS))];
    lines.push("", paint(padded(head), "dim", terminal));
    for (let row = 0; row < rows.length; row += columns) {
      const places = rows.slice(row + from, row + Math.min(from + perBlock, columns));
      const cells = places.map(({ isSound, keepsRequirements, figures: [value = null] }) =>
        isSound ? `${keepsRequirements ? `${KEPT} ` : ""}${cellText(figure, value, system)}` : UNSOUND,
      );
      lines.push(padded([number(places[0]?.values[0] ?? 0, DIGITS), ...cells]));
    }
  }
  return lines;
}

function padded(cells: readonly string[]): string {
  return cells
    .map((cell) => cell.padStart(CELL))
    .join("")
    .trimEnd();
}

function titleOf({ label, measure }: StudiedFigure, system: UnitSystem): string {
  const { unit } = measure === "grade" ? { unit: "G" } : unitOf(measure, system);
  return unit === "" ? label : `${label} ${unit}`;
}

function cellText({ measure }: StudiedFigure, value: number | null, system: UnitSystem): string {
  return value === null ? "–" : number(value / unitOf(measure, system).perUnit, DIGITS);
}

/** Titles over columns, broken at spaces, the last line just above the numbers. */
function headOf(titles: readonly string[]): string[] {
  const broken = titles.map((title) => wrapped(title, CELL - 2));
  const height = Math.max(...broken.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    padded(broken.map((lines) => lines[lines.length - height + line] ?? "")),
  );
}

/** Where each value lies between the least, 0, and the greatest, 1. */
function sharesOf(values: readonly (number | null)[]): readonly (number | null)[] {
  const known = values.filter((value) => value !== null);
  const [least, greatest] = [Math.min(...known), Math.max(...known)];
  return values.map((value) =>
    value === null || !(greatest > least) ? null : (value - least) / (greatest - least),
  );
}

/** The least has a sliver too: it is there. */
function barOf(share: number | null): string {
  return share === null ? "" : shareBar(Math.max(share, 1 / (8 * BAR)), BAR);
}
