/**
 * A comparison as people read it: sections of rows, each with a cell a bar. The terminal and the page lay it out each
 * in their own way, so neither can say something else.
 */
import type { FigureGroup, FigureValue, Measure } from "../figures/figure.ts";
import { FIGURE_GROUPS, isToldUnknown } from "../figures/figure.ts";
import { fixed, number, presentMeasure, type UnitSystem, unitOf } from "../figures/present.ts";
import type {
  BarHead,
  ComparedBar,
  Comparison,
  FigureRow,
  RequirementRow,
} from "../study/compare/compare.ts";
import { type BiteCell, compareBite } from "../study/compare/compare-bite.ts";
import type { Difference } from "../study/compare/difference.ts";
import { isDifferent } from "./compare-json.ts";
import type { ComparisonTable, TableCell, TableRow, TableSection } from "./comparison-rows.ts";
import { GROUP_TITLES, join, roundSpeeds } from "./report.ts";

/** Lay a comparison out in one system of units. */
export function comparisonTable(
  bars: readonly ComparedBar[],
  comparison: Comparison,
  system: UnitSystem,
): ComparisonTable {
  const figures = FIGURE_GROUPS.filter((group) => isTold(comparison, group)).map((group) => ({
    key: group,
    title: GROUP_TITLES[group],
    rows: comparison.figures.filter((row) => row.group === group).flatMap((row) => figureRows(row, system)),
  }));
  const sections = [...figures, requirementSection(comparison, system), ...biteSections(bars, system)];
  return {
    columns: columnTitles(comparison.bars),
    sections: sections.filter(({ rows }) => rows.length > 0),
  };
}

/** Whether anything of a group is known in any bar, or worth telling that it is not. */
function isTold({ figures }: Comparison, group: FigureGroup): boolean {
  const isKnown = ({ cells }: FigureRow) => cells.some(({ value }) => value !== null);
  return isToldUnknown(group) || figures.some((row) => row.group === group && isKnown(row));
}

/** Variants of one file by their names; bars of several files by file name, by the whole path where that is not enough. */
export function columnTitles(bars: readonly Pick<BarHead, "file" | "variant">[]): string[] {
  const files = [...new Set(bars.map(({ file }) => file))];
  if (files.length < 2) return bars.map(({ variant }) => variant ?? "as written");
  const isClear = new Set(files.map(baseName)).size === files.length;
  return bars.map(({ file, variant }) => {
    const name = isClear ? baseName(file) : file;
    return variant === null ? name : `${name}: ${variant}`;
  });
}

function baseName(path: string): string {
  return path.slice(Math.max(path.lastIndexOf("/"), path.lastIndexOf("\\")) + 1);
}

// Figures ----------------------------------------------------------------------------------------------------------

function figureRows(row: FigureRow, system: UnitSystem): TableRow[] {
  const measure = row.measure ?? measureOfKey(row);
  if (measure === null) return [];
  return partsOf(row, measure).map(({ key, label, of, as }) => ({
    key,
    label,
    meaning: row.meaning,
    differs: isDifferent(row) && row.cells.some((cell) => isShown(of(cell.difference), as, system)),
    cells: row.cells.map(({ value, difference, percent, verdict }) => ({
      value: valueText(of(value), as, system),
      ...changeText({ difference: of(difference), percent }, as, system),
      verdict,
    })),
  }));
}

/**
 * A number that reports tell in words only has a row where it is anything: its unit stands in its key, as for all
 * figures.
 */
function measureOfKey({ key, cells }: FigureRow): Measure | null {
  return key.endsWith("Mm") && cells.some(({ value }) => value !== null && value !== 0) ? "length" : null;
}

interface RowPart {
  readonly key: string;
  readonly label: string;
  readonly as: Measure;
  of(value: FigureValue): FigureValue;
}

/** Values of several numbers are compared number by number: each has a row. */
function partsOf({ key, label, cells }: FigureRow, measure: Measure): RowPart[] {
  const named = (names: readonly (string | number)[], shown: readonly string[], as: Measure) =>
    names.map((name, i) => ({
      key: `${key}.${name}`,
      label: `${label}, ${shown[i] ?? name}`,
      as,
      of: (value: FigureValue) => partOf(value, name),
    }));
  switch (measure) {
    case "point":
      return named([0, 1], ["x", "y"], "length");
    case "bounds":
      return named([0, 1, 2, 3], ["least x", "least y", "greatest x", "greatest y"], "length");
    case "secondMoments":
    case "permissible": {
      const names = [...new Set(cells.flatMap(({ value }) => (isRecord(value) ? Object.keys(value) : [])))];
      return named(names, names, measure === "permissible" ? "imbalance" : "secondMoments");
    }
    default:
      return [{ key, label, as: measure, of: (value) => value }];
  }
}

function partOf(value: FigureValue, name: string | number): FigureValue {
  if (typeof value !== "object" || value === null) return null;
  return Object.entries<FigureValue>(value).find(([key]) => key === String(name))?.[1] ?? null;
}

function isRecord(value: FigureValue): value is { readonly [key: string]: FigureValue } {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function valueText(value: FigureValue, measure: Measure, system: UnitSystem): string {
  if (measure === "secondMoments") return typeof value === "number" ? `${number(value, 5)} mm⁴` : "–";
  return value === null ? "–" : join(presentMeasure(measure, value, system));
}

/** Whether a difference is any when it is told: of several numbers only those that differ. What has none is told by its value. */
function isShown(difference: FigureValue, measure: Measure, system: UnitSystem): boolean {
  if (typeof difference !== "number") return true;
  return valueText(Math.abs(difference), measure, system) !== valueText(0, measure, system);
}

function changeText(
  { difference, percent }: Pick<Difference, "difference" | "percent">,
  measure: Measure,
  system: UnitSystem,
): Pick<TableCell, "difference" | "percent"> {
  if (typeof difference !== "number" || !isShown(difference, measure, system))
    return { difference: "", percent: "" };
  const amount = amountText(Math.abs(difference), measure, system);
  return {
    difference: `${signOf(difference)}${amount}`,
    percent: percent === null ? "" : `${signOf(percent)}${percentText(Math.abs(percent))} %`,
  };
}

/** The difference of two grades is no grade. */
function amountText(amount: number, measure: Measure, system: UnitSystem): string {
  return measure === "grade" ? number(amount, 3) : valueText(amount, measure, system);
}

function signOf(difference: number): string {
  return difference < 0 ? "-" : difference > 0 ? "+" : "";
}

/** Three digits or so: hundredths of small changes, none of large ones. */
function percentText(percent: number): string {
  const decimals = percent < 9.995 ? 2 : percent < 99.95 ? 1 : 0;
  return fixed(percent, decimals) === "0" && percent > 0
    ? percent.toFixed(decimals)
    : fixed(percent, decimals);
}

// Requirements and bite --------------------------------------------------------------------------------------------

function requirementSection({ requirements }: Comparison, system: UnitSystem): TableSection {
  const rows = requirements.map((row, i): TableRow => {
    const cells = row.cells.map((cell) => requirementCell(row, cell, system));
    const differs =
      row.cells.some(({ verdict }) => verdict !== "same") ||
      new Set(row.cells.map(({ limit }) => limit)).size > 1;
    const relation = row.relation === "<=" ? "at most" : "at least";
    const limit = valueText(row.cells[0]?.limit ?? null, row.measure, system);
    return {
      key: `${row.key}.${i}`,
      label: `${row.label} ${relation} ${limit}`,
      meaning: "",
      differs,
      cells,
    };
  });
  return { key: "requirements", title: "Requirements", rows };
}

function requirementCell(
  { measure, cells }: RequirementRow,
  { limit, margin, holds, verdict }: RequirementRow["cells"][number],
  system: UnitSystem,
): TableCell {
  const word = holds === null ? "not known" : holds ? "met" : "NOT MET";
  const amount = margin === null ? "" : amountText(Math.abs(margin), measure, system);
  const ownLimit = limit === cells[0]?.limit ? "" : ` (limit ${valueText(limit, measure, system)})`;
  return {
    value: `${word}${amount === "" ? "" : ` by ${amount}`}${ownLimit}`,
    difference: "",
    percent: "",
    verdict,
  };
}

/** The bite at closing speeds that a person would choose. */
function biteSections(bars: readonly ComparedBar[], system: UnitSystem): TableSection[] {
  const assessments = bars.map(({ analysis }) => analysis.assessment);
  const curve = assessments.find(({ bite }) => bite !== null)?.bite?.curve ?? [];
  const speed = unitOf("speed", system);
  const bite = compareBite(assessments, roundSpeeds(curve, speed.perUnit));
  if (!bite) return [];
  const section = (key: string, title: string, of: BiteFigure): TableSection => ({
    key,
    title,
    rows: bite.closingMPerS.map((closing, i) => {
      const cells = bite.bars.map((bar) => (bar?.[i] ? of(bar[i]) : null));
      return {
        key: `${key}.${i}`,
        label: `at ${number(closing / speed.perUnit, 6)} ${speed.unit}`,
        meaning: "",
        differs: cells.some((cell) => !cell?.against.same),
        cells: cells.map((cell) => biteTableCell(cell, system)),
      };
    }),
  });
  return [
    section("deepest", "Deepest bite", ({ maxMm, ofMax }) => ({ mm: maxMm, against: ofMax })),
    section("mean", "Mean bite", ({ meanMm, ofMean }) => ({ mm: meanMm, against: ofMean })),
  ];
}

type BiteFigure = (cell: BiteCell) => { readonly mm: number; readonly against: Difference };

function biteTableCell(cell: ReturnType<BiteFigure> | null, system: UnitSystem): TableCell {
  if (!cell) return { value: "–", difference: "", percent: "", verdict: null };
  const { unit, perUnit } = unitOf("length", system);
  const length = (mm: number) => `${(mm / perUnit).toFixed(system === "mm" ? 2 : 3)} ${unit}`;
  const { difference, percent, same } = cell.against;
  const changed = changeText({ difference, percent }, "length", system);
  return {
    value: length(cell.mm),
    difference: typeof difference === "number" ? `${signOf(difference)}${length(Math.abs(difference))}` : "",
    percent: changed.percent,
    verdict: same ? "same" : null,
  };
}
