/** The report in a terminal: at most 80 columns, colour only where the terminal takes it. */
import type { Analysis } from "../../geometry/analysis/analyse.ts";
import { join, type Report, type ReportRow, type RequirementRow } from "../../geometry/files/report.ts";
import { cautionsText } from "./cautions-text.ts";
import { paint } from "./paint.ts";
import { oneLine, problemLine } from "./problem-line.ts";
import { shareBar } from "./share-bar.ts";
import type { Terminal } from "./world.ts";
import { MOST_COLUMNS, wrap } from "./wrap.ts";

const LABEL_WIDTH = 27;
const BAR_WIDTH = 16;

/** Lay a report out for a terminal. */
export function reportText(report: Report, analysis: Analysis, path: string, terminal: Terminal): string {
  const blocks = [
    heading(report, terminal),
    ...report.sections.map(({ title, rows }) => section(title, rows, terminal)),
    steeringText(report, terminal),
    ...budgetTables(report, terminal),
    biteTable(report, terminal),
    strikeTable(report, terminal),
    depthTable(report, terminal),
    spinTable(report, terminal),
    requirementTable(report.requirements, terminal),
    problemList(analysis, path, terminal),
    cautionsText(terminal),
  ];
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

function heading({ title, variant, subtitle }: Report, terminal: Terminal): string {
  const name = oneLine(variant === null ? title : `${title} – ${variant}`);
  const rule = "─".repeat(Math.min(terminal.columns, MOST_COLUMNS));
  return [paint(name, "bold", terminal), oneLine(subtitle), paint(rule, "dim", terminal)].join("\n");
}

function section(title: string, rows: readonly ReportRow[], terminal: Terminal): string {
  const lines = rows.map(({ label, value }) => `  ${label.padEnd(LABEL_WIDTH)}${join(value)}`);
  return [paint(title, "bold", terminal), ...lines].join("\n");
}

function steeringText({ steering }: Report, terminal: Terminal): string {
  if (steering === null) return "";
  const line = (ground: string, up: string, down: string) =>
    `  ${ground.padStart(16)}${up.padStart(16)}${down.padStart(16)}`;
  const head = paint(line(`driving ${steering.speedUnit}`, "edge up °/s", "edge down °/s"), "dim", terminal);
  const rows = steering.rows.map(({ ground, up, down }) => line(ground, up, down));
  return [
    paint("Where a wheel lifts in a turn", "bold", terminal),
    ...(rows.length === 0 ? [] : [head, ...rows]),
    ...wrap(steering.words, "  "),
  ].join("\n");
}

/** Long names are cut: a row stays one line. */
const NAME_WIDTH = 30;

function budgetTables({ budget }: Report, terminal: Terminal): string[] {
  if (budget === null) return [];
  const cut = (name: string) => {
    const text = oneLine(name);
    return (text.length > NAME_WIDTH ? `${text.slice(0, NAME_WIDTH - 1)}…` : text).padEnd(NAME_WIDTH);
  };
  const line = (name: string, cells: readonly string[], widths: readonly number[]) =>
    `  ${cut(name)}${cells.map((cell, i) => cell.padStart(widths[i] ?? 0)).join("")}`;
  const partLine = (name: string, cells: readonly string[]) => line(name, cells, [7, 13, 13, 10]);
  const offLine = (name: string, cells: readonly string[]) => line(name, cells, [14, 24]);
  const block = (title: string, head: string, lines: readonly string[]) =>
    [paint(title, "bold", terminal), paint(head, "dim", terminal), ...lines].join("\n");
  const parts = budget.rows.map(({ name, count, each, mass, share }) =>
    partLine(name, [count, each, mass, share]),
  );
  const off = budget.leftOff.map(({ name, saves, without }) => offLine(name, [saves, without]));
  return [
    block("Weight, part by part", partLine("", ["count", "each", "mass", "share"]), parts),
    off.length === 0 ? "" : block("What could be left off", offLine("", ["saves", "without it"]), off),
  ];
}

function biteTable({ bite }: Report, terminal: Terminal): string {
  if (bite.rows.length === 0) return "";
  const { speedUnit, depthUnit } = bite;
  const title = paint("Bite against closing speed", "bold", terminal);
  const head = row(
    [`closing ${speedUnit}`, `deepest ${depthUnit}`, "mean", "10–90 %", "square", "ideal"],
    "",
  );
  const lines = bite.rows.map(({ closing, deepest, mean, middle, square, ideal, depthShare }) =>
    row(
      [closing, deepest, mean, middle, square, ideal],
      paint(shareBar(depthShare, BAR_WIDTH), "cyan", terminal),
    ),
  );
  return [title, ...wrap(`The bar meets ${bite.target}.`, "  "), paint(head, "dim", terminal), ...lines].join(
    "\n",
  );
}

function strikeTable({ bite }: Report, terminal: Terminal): string {
  if (bite.strikes.length === 0) return "";
  const title = paint(`What strikes first at ${bite.fastest}`, "bold", terminal);
  const head = strikeLine("", "share", "depth", "angle");
  const lines = bite.strikes.map(({ where, share, depth, angle }) => strikeLine(where, share, depth, angle));
  return [title, paint(head, "dim", terminal), ...lines].join("\n");
}

function strikeLine(where: string, share: string, depth: string, angle: string): string {
  return `  ${where.padEnd(44)}${share.padStart(8)}${depth.padStart(15)}${angle.padStart(10)}`;
}

function depthTable({ bite }: Report, terminal: Terminal): string {
  if (bite.depths.length === 0) return "";
  const title = paint("What a depth takes", "bold", terminal);
  const line = (depth: string, closing: string, spin: string) =>
    `  ${depth.padEnd(12)}${closing.padEnd(24)}${spin}`;
  const head = line("deepest", "at this spin", `at ${bite.fastest}`);
  const lines = bite.depths.map(({ depth, closing, spin }) => line(depth, closing, spin));
  return [title, paint(head, "dim", terminal), ...lines].join("\n");
}

function spinTable({ bite }: Report, terminal: Terminal): string {
  if (bite.spinningUp.length === 0) return "";
  const title = paint(`While it spins up, at ${bite.fastest}`, "bold", terminal);
  const line = (cells: readonly string[]) => `  ${cells.map((cell) => cell.padStart(12)).join("")}`;
  const head = line(["rpm", `deepest ${bite.depthUnit}`, "mean", "square"]);
  const lines = bite.spinningUp.map(({ spin, deepest, mean, square }) => line([spin, deepest, mean, square]));
  return [title, paint(head, "dim", terminal), ...lines].join("\n");
}

const COLUMN_WIDTHS = [12, 12, 8, 14, 8, 8] as const;

function row(cells: readonly string[], tail: string): string {
  const padded = cells.map((cell, index) => cell.padStart(COLUMN_WIDTHS[index] ?? 8)).join("");
  return `${padded}  ${tail}`.trimEnd();
}

function requirementTable(requirements: readonly RequirementRow[], terminal: Terminal): string {
  if (requirements.length === 0) return "";
  const lines = requirements.map(({ label, value, limit, holds }) => {
    const verdict = holds === null ? "not known" : holds ? "met" : "NOT MET";
    const colour = holds === null ? "yellow" : holds ? "green" : "red";
    return `  ${label.padEnd(LABEL_WIDTH)}${value.padEnd(14)}${limit.padEnd(24)}${paint(verdict, colour, terminal)}`;
  });
  return [paint("Requirements", "bold", terminal), ...lines].join("\n");
}

function problemList({ problems, source }: Analysis, path: string, terminal: Terminal): string {
  if (problems.length === 0) return "";
  const lines = problems.map((problem) => problemLine(problem, source.lines, path, terminal));
  return [paint("Problems", "bold", terminal), ...lines.flatMap((line) => wrap(line, "  "))].join("\n");
}
