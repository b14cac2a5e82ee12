/** A wear study in a terminal: at most 80 columns. */
import type { Analysis } from "../../geometry/analysis/analyse.ts";
import { fixed, number, presentMeasure, type UnitSystem, unitOf } from "../../geometry/figures/present.ts";
import type { WearRow, WearStudy } from "../../geometry/study/wear/wear.ts";
import { WEAR_CAUTIONS, WEAR_NOTES } from "../../geometry/study/wear/wear-notes.ts";
import { paint } from "./paint.ts";
import { oneLine } from "./problem-line.ts";
import type { Terminal } from "./world.ts";
import { MOST_COLUMNS, wrap } from "./wrap.ts";

/** Lay a wear study out for a terminal. */
export function wearText(
  study: WearStudy,
  analysis: Analysis,
  units: UnitSystem,
  terminal: Terminal,
): string {
  const blocks = [
    heading(study, analysis, terminal),
    table(study, units, terminal),
    remarks(study, units),
    ["Taken for given", ...wrap(WEAR_NOTES[study.model], "  ")].join("\n"),
    ["Take care", ...WEAR_CAUTIONS.flatMap((caution) => wrap(caution, "  "))].join("\n"),
  ];
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

function heading(
  { model, teeth, tips }: WearStudy,
  { design, variant }: Analysis,
  terminal: Terminal,
): string {
  const name = `${design.name ?? "Unnamed bar"}${variant === null ? "" : ` – ${variant}`}`;
  const rule = "─".repeat(Math.min(terminal.columns, MOST_COLUMNS));
  const count =
    tips.length === 1 && teeth === "all"
      ? "its tooth"
      : teeth === "all"
        ? `its ${tips.length} teeth`
        : "one tooth";
  const what = model === "tip" ? `${count} worn from the tip` : `the face of ${count} ground back`;
  return [paint(oneLine(`${name}: ${what}`), "bold", terminal), paint(rule, "dim", terminal)].join("\n");
}

const COLUMNS = [9, 11, 10, 12, 9, 10, 9, 10] as const;

function table({ rows, closingMPerS }: WearStudy, units: UnitSystem, terminal: Terminal): string {
  const length = unitOf("length", units).unit;
  const line = (cells: readonly string[]) => cells.map((cell, i) => cell.padStart(COLUMNS[i] ?? 9)).join("");
  const heads = [
    line(["worn", "tip", "mass", "imbalance", "grade", "energy", "bite", "square"]),
    line([
      "by",
      "radius",
      "",
      "",
      "",
      "",
      closingMPerS === null ? "" : `${number(closingMPerS, 3)} m/s`,
      "strikes",
    ]),
    line([
      length,
      length,
      unitOf("mass", units).unit,
      unitOf("imbalance", units).unit,
      "mm/s",
      "J",
      length,
      "%",
    ]),
  ];
  const lines = rows.map((row) => line(cellsOf(row, units)));
  return [...heads.map((head) => paint(head, "dim", terminal)), ...lines].join("\n");
}

function cellsOf({ byMm, bar }: WearRow, units: UnitSystem): readonly string[] {
  const { perUnit } = unitOf("length", units);
  const by = fixed(byMm / perUnit, units === "mm" ? 2 : 4);
  if (!bar) return [by, "no sound", "bar left"];
  const shown = (
    measure: "length" | "mass" | "imbalance" | "energy",
    value: number | null,
    digits: number,
  ) => (value === null ? "–" : number(value / unitOf(measure, units).perUnit, digits));
  return [
    by,
    shown("length", bar.tipRadiusMm, 5),
    shown("mass", bar.massKg, 4),
    shown("imbalance", bar.imbalanceGMm, 4),
    bar.gradeMmPerS === null ? "–" : number(bar.gradeMmPerS, 3),
    shown("energy", bar.energyJ, 4),
    shown("length", bar.biteMm, 4),
    bar.squareShare === null ? "–" : number(bar.squareShare * 100, 3),
  ];
}

function remarks({ rows, wanted, leavesBalanceAtMm }: WearStudy, units: UnitSystem): string {
  const at = (mm: number): string => {
    const { text, unit } = presentMeasure("length", mm, units);
    return `${text} ${unit}`;
  };
  const [first] = rows;
  const lines: string[] = [];
  if (leavesBalanceAtMm !== null)
    lines.push(`Not within ${wanted.text} any more from ${at(Number(leavesBalanceAtMm.toPrecision(2)))} on.`);
  else if (first?.bar && first.bar.eccentricityMm <= wanted.eccentricityMm)
    lines.push(`Within ${wanted.text} all along.`);
  const failing = rows.find(({ bar }) => bar?.failed.some((name) => !first?.bar?.failed.includes(name)));
  if (failing?.bar)
    lines.push(`At ${at(failing.byMm)} it fails what the file requires: ${failing.bar.failed.join(", ")}.`);
  const gone = rows.find(({ bar }) => bar === null);
  if (gone) lines.push(`At ${at(gone.byMm)} there is no sound bar left, or no face to grind.`);
  return lines.flatMap((line) => wrap(oneLine(line), "  ")).join("\n");
}
