/** Bars side by side in a terminal: at most 80 columns, in blocks of bars where there are too many for one. */
import type {
  ComparisonTable,
  TableCell,
  TableRow,
  TableSection,
} from "../../geometry/files/comparison-rows.ts";
import { cautionsText } from "./cautions-text.ts";
import { type Paint, paint } from "./paint.ts";
import { oneLine } from "./problem-line.ts";
import type { Terminal } from "./world.ts";
import { MOST_COLUMNS, wrapped } from "./wrap.ts";

const LABEL_WIDTH = 26;
/** A value with its unit, and a change in per cent with its word. */
const LEAST_CELL_WIDTH = 18;
const GAP = 2;

/** Lay a comparison out for a terminal; the reference comes first in each block. */
export function comparisonText(table: ComparisonTable, terminal: Terminal): string {
  const width = Math.min(Math.max(terminal.columns, LABEL_WIDTH + 2 * LEAST_CELL_WIDTH), MOST_COLUMNS);
  const blocks = blocksOf(table.columns.length, Math.floor((width - LABEL_WIDTH) / LEAST_CELL_WIDTH));
  const texts = blocks.map((bars) => blockText(table, bars, width, terminal));
  return `${[...texts, cautionsText(terminal)].join("\n\n")}\n`;
}

/** The bars of each block, by their places; the reference, 0, in all of them. */
function blocksOf(bars: number, most: number): number[][] {
  const others = Array.from({ length: bars - 1 }, (_, i) => i + 1);
  const blocks: number[][] = [];
  for (let from = 0; from < others.length; from += most - 1)
    blocks.push([0, ...others.slice(from, from + most - 1)]);
  return blocks.length > 0 ? blocks : [[0]];
}

function blockText(
  { columns, sections }: ComparisonTable,
  bars: readonly number[],
  width: number,
  terminal: Terminal,
): string {
  const cellWidth = Math.floor((width - LABEL_WIDTH) / bars.length);
  const titles = bars.map((bar) => wrapped(oneLine(columns[bar] ?? ""), cellWidth - GAP));
  const head = laidOut([[""], ...titles], cellWidth).map((line) => paint(line, "bold", terminal));
  const rule = paint("─".repeat(width), "dim", terminal);
  const texts = sections.map((section) => sectionText(section, bars, cellWidth, terminal));
  if (texts.length === 0) texts.push("  Nothing differs.");
  return [...head, rule, texts.join("\n\n")].join("\n");
}

function sectionText(
  { title, rows }: TableSection,
  bars: readonly number[],
  cellWidth: number,
  terminal: Terminal,
): string {
  const lines = rows.flatMap((row) => rowLines(row, bars, cellWidth, terminal));
  return [paint(title, "bold", terminal), ...lines].join("\n");
}

function rowLines(
  { label, cells }: TableRow,
  bars: readonly number[],
  cellWidth: number,
  terminal: Terminal,
): string[] {
  const texts = bars.map((bar) => cellLines(cells[bar], bar > 0, cellWidth - GAP));
  const lines = laidOut([wrapped(label, LABEL_WIDTH - 2 * GAP), ...texts], cellWidth, "  ");
  return lines.map((line) => coloured(line, terminal));
}

/** The value, and under it how it stands to the reference. */
function cellLines(cell: TableCell | undefined, isCompared: boolean, width: number): string[] {
  if (!cell) return [""];
  const change = isCompared ? changeText(cell) : "";
  return [...wrapped(oneLine(cell.value), width), ...(change === "" ? [] : wrapped(change, width))];
}

/** In words: colour alone would be lost in a pipe, and on many eyes. */
function changeText({ difference, percent, verdict }: TableCell): string {
  if (verdict === "same") return "";
  return [percent === "" ? difference : percent, verdict ?? ""].filter((part) => part !== "").join(" ");
}

const COLOURS: readonly (readonly [word: RegExp, colour: Paint])[] = [
  [/\bbetter\b|\bmet\b/g, "green"],
  [/\bworse\b|\bNOT MET\b/g, "red"],
];

function coloured(line: string, terminal: Terminal): string {
  return COLOURS.reduce(
    (text, [word, colour]) => text.replace(word, (found) => paint(found, colour, terminal)),
    line,
  );
}

/** Cells of several lines beside each other, the first as wide as a label. */
function laidOut(cells: readonly (readonly string[])[], cellWidth: number, indent = ""): string[] {
  const height = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) => {
    const texts = cells.map((lines, i) =>
      i === 0 ? `${indent}${lines[line] ?? ""}`.padEnd(LABEL_WIDTH) : (lines[line] ?? "").padEnd(cellWidth),
    );
    return texts.join("").trimEnd();
  });
}
