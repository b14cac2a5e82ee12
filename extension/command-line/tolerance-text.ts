/** A tolerance study in a terminal: at most 80 columns. */
import type { Analysis } from "../../geometry/analysis/analyse.ts";
import { fixed, number } from "../../geometry/figures/present.ts";
import type { Distribution } from "../../geometry/study/tolerance/distribution.ts";
import type { ToleranceStudy } from "../../geometry/study/tolerance/tolerance.ts";
import {
  CAUSE_NAMES,
  TOLERANCE_CAUTIONS,
  TOLERANCE_NOTES,
} from "../../geometry/study/tolerance/tolerance-notes.ts";
import { paint } from "./paint.ts";
import { oneLine } from "./problem-line.ts";
import type { Terminal } from "./world.ts";
import { MOST_COLUMNS, wrap } from "./wrap.ts";

/** Lay a tolerance study out for a terminal. */
export function toleranceText(study: ToleranceStudy, analysis: Analysis, terminal: Terminal): string {
  const blocks = [
    heading(analysis, terminal),
    givenBlock(study),
    distributions(study, terminal),
    shares(study, terminal),
    causes(study, terminal),
    allowance(study, terminal),
    list("Taken for given", TOLERANCE_NOTES, terminal),
    list("Take care", TOLERANCE_CAUTIONS, terminal),
  ];
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

function heading({ design, variant }: Analysis, terminal: Terminal): string {
  const name = `${design.name ?? "Unnamed bar"}${variant === null ? "" : ` – ${variant}`}`;
  const rule = "─".repeat(Math.min(terminal.columns, MOST_COLUMNS));
  return [paint(oneLine(`${name}: balance as cut`), "bold", terminal), paint(rule, "dim", terminal)].join(
    "\n",
  );
}

const LABEL_WIDTH = 20;

function row(label: string, text: string): string {
  const [first = "", ...more] = wrap(text, " ".repeat(LABEL_WIDTH + 2));
  return [`  ${label.padEnd(LABEL_WIDTH)}${first.trimStart()}`, ...more].join("\n");
}

function givenBlock({ given, nominalGMm }: ToleranceStudy): string {
  const { plate, cut, wedgeMm, parts, seed, spread, edges } = given;
  const spreads = spread === "uniform" ? "anywhere within the limits" : "normal, limits at two sigma";
  return [
    row(
      "Plate",
      `${plate.text}: ${signed(plate.lowerMm)} to ${signed(plate.upperMm)} mm; across this bar at most ${fixed(wedgeMm, 3)} mm`,
    ),
    row("Cut", `${cut.text}${edges === "together" ? ", all edges off alike" : ""}`),
    row("Sample", `${parts} parts, ${spreads}, seed ${seed}`),
    row("As drawn", `${number(nominalGMm, 4)} g·mm`),
  ].join("\n");
}

function signed(value: number): string {
  return value > 0 ? `+${value}` : String(value);
}

const COLUMN = 11;

function distributions(study: ToleranceStudy, terminal: Terminal): string {
  const line = (label: string, cells: readonly string[]) =>
    `  ${label.padEnd(LABEL_WIDTH)}${cells.map((cell) => cell.padStart(COLUMN)).join("")}`;
  const of = (label: string, values: Distribution, digits: number) =>
    line(
      label,
      [values.mean, values.p50, values.p90, values.p95, values.p99].map((value) => number(value, digits)),
    );
  const lines = [
    ...(study.grade ? [of("Grade, mm/s", study.grade, 3)] : []),
    of("Imbalance, g·mm", study.imbalanceGMm, 3),
    of("Mass, kg", study.massKg, 4),
  ];
  return [
    paint(line("So many no more than", ["mean", "50 %", "90 %", "95 %", "99 %"]), "dim", terminal),
    ...lines,
  ].join("\n");
}

function shares({ within, wanted, byGrade }: ToleranceStudy, terminal: Terminal): string {
  const interval = `${percent(within.from)} to ${percent(within.to)} with 95 % confidence`;
  const lines = [row(`Within ${wanted.text}`, `${percent(within.share)} of the parts (${interval})`)];
  const told = byGrade.filter(({ share }) => share >= LEAST_TOLD);
  if (told.length > 0)
    lines.push(row("By grade", told.map(({ name, share }) => `${name} ${percent(share)}`).join(", ")));
  return [paint("Parts that need nothing done", "bold", terminal), ...lines].join("\n");
}

/** What would be told as nothing. */
const LEAST_TOLD = 0.0005;

function percent(share: number): string {
  return `${(share * 100).toFixed(1)}\u00a0%`;
}

function causes({ causes: found }: ToleranceStudy, terminal: Terminal): string {
  const lines = found.map(
    ({ cause, rmsGMm }) => `  ${CAUSE_NAMES[cause].padEnd(50)}${number(rmsGMm, 3).padStart(10)}`,
  );
  return [
    paint("Where it comes from, each alone, root mean square in g·mm", "bold", terminal),
    ...lines,
  ].join("\n");
}

function allowance({ takeOffG, atRadiusMm, stockMm, wanted }: ToleranceStudy, terminal: Terminal): string {
  const at = `${number(atRadiusMm, 4)} mm`;
  return [
    paint(`To bring 95 % of the parts within ${wanted.text} by taking metal off`, "bold", terminal),
    row(
      "On the heavy side",
      `${number(takeOffG.p95, 3)} g at ${at} from the axis; nearer more, in proportion`,
    ),
    row(
      "As stock on a blank",
      `${fixed(stockMm.p95, 2)} mm all round the outer edge, ground off but for what the light side keeps`,
    ),
  ].join("\n");
}

function list(title: string, lines: readonly string[], terminal: Terminal): string {
  return [paint(title, "bold", terminal), ...lines.flatMap((line) => wrap(line, "  "))].join("\n");
}
