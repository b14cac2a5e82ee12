import type { Analysis } from "../analysis/analyse.ts";
import type { UnitSystem } from "../figures/present.ts";
import { CAUTIONS } from "./cautions.ts";
import { escapeText, markdownTable } from "./markdown-table.ts";
import { join, type Report, reportOf } from "./report.ts";

/** The report as a Markdown page to print: every figure, the bite table, requirements, problems and cautions. */
export function toMarkdown(analysis: Analysis, system: UnitSystem): string {
  const report = reportOf(analysis, system);
  const blocks = [
    `# ${escapeText(report.title)}${report.variant === null ? "" : ` – ${escapeText(report.variant)}`}`,
    escapeText(report.subtitle),
    ...report.sections.map(({ title, rows }) =>
      markdownTable(
        title,
        ["Figure", "Value"],
        rows.map(({ label, value }) => [label, join(value)]),
      ),
    ),
    ...steeringBlocks(report),
    ...budgetBlocks(report),
    ...biteBlocks(report),
    requirementBlock(report),
    problemBlock(analysis),
    `## Cautions\n\n${CAUTIONS.map((caution) => `- ${caution}`).join("\n")}`,
  ];
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

function steeringBlocks({ steering }: Report): string[] {
  if (steering === null) return [];
  const rows = steering.rows.map(({ ground, up, down }) => [ground, up, down]);
  const head = [`Ground speed (${steering.speedUnit})`, "Edge up (°/s)", "Edge down (°/s)"];
  const table = rows.length === 0 ? "" : markdownTable("Where a wheel lifts in a turn", head, rows);
  return [table, escapeText(steering.words)];
}

function budgetBlocks({ budget }: Report): string[] {
  if (budget === null) return [];
  const rows = budget.rows.map(({ name, count, each, mass, share }) => [name, count, each, mass, share]);
  const leftOff = budget.leftOff.map(({ name, saves, without }) => [name, saves, without]);
  return [
    markdownTable("Weight, part by part", ["Part", "Count", "Each", "Mass", "Share"], rows),
    leftOff.length === 0
      ? ""
      : markdownTable("What could be left off", ["Part", "Saves", "Without it"], leftOff),
  ];
}

function biteBlocks({ bite }: Report): string[] {
  if (bite.rows.length === 0) return [];
  const depth = (name: string) => `${name} (${bite.depthUnit})`;
  const head = [`Closing (${bite.speedUnit})`, depth("Deepest"), depth("Mean"), depth("10–90 %")];
  const rows = bite.rows.map(({ closing, deepest, mean, middle, square, ideal }) => {
    return [closing, deepest, mean, middle, square, ideal];
  });
  return [
    markdownTable("Bite against closing speed", [...head, "Square strikes", depth("Ideal")], rows),
    `The bar meets ${bite.target}.`,
    markdownTable(
      `What strikes first at ${bite.fastest}`,
      ["Where", "Share", "Depth", "Strike angle"],
      bite.strikes.map(({ where, share, depth, angle }) => [where, share, depth, angle]),
    ),
    markdownTable(
      "What a depth takes",
      ["Depth", "Closing speed at this spin", `Spin at ${bite.fastest}`],
      bite.depths.map(({ depth, closing, spin }) => [depth, closing, spin]),
    ),
    markdownTable(
      `While it spins up, at ${bite.fastest}`,
      ["Spin (rpm)", depth("Deepest"), depth("Mean"), "Square strikes"],
      bite.spinningUp.map(({ spin, deepest, mean, square }) => [spin, deepest, mean, square]),
    ),
  ];
}

function requirementBlock({ requirements }: Report): string {
  if (requirements.length === 0) return "";
  const verdict = { true: "met", false: "not met" };
  const rows = requirements.map(({ label, value, limit, holds }) => [
    label,
    value,
    limit,
    holds === null ? "not known" : verdict[`${holds}`],
  ]);
  return markdownTable("Requirements", ["Figure", "Value", "Limit", "Verdict"], rows);
}

function problemBlock({ problems, source }: Analysis): string {
  if (problems.length === 0) return "";
  const items = problems.map(({ severity, message, range }) => {
    return `- Line ${source.lines.position(range.start).line}, ${severity}: ${escapeText(message)}`;
  });
  return `## Problems\n\n${items.join("\n")}`;
}
