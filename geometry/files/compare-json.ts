import { FIGURE_GROUPS } from "../figures/figure.ts";
import type {
  BiteCell,
  ComparedBar,
  Comparison,
  FigureRow,
  RequirementRow,
} from "../study/compare/compare.ts";
import { CAUTIONS } from "./cautions.ts";
import { problemJson } from "./json.ts";

/**
 * A comparison as one plain object with stable keys: for each bar what `report` tells, each figure with its value and
 * how it stands to the first bar's. Units in the names, `percent` of the reference; unknown is `null`.
 * @param onlyDifferent leaves out figures that are the same within rounding in every bar
 */
export function comparisonJson(bars: readonly ComparedBar[], comparison: Comparison, onlyDifferent = false) {
  const rows = onlyDifferent ? comparison.figures.filter(isDifferent) : comparison.figures;
  return {
    bars: comparison.bars.map(({ file, name, variant }, i) => ({
      file,
      bar: name,
      variant,
      ...groupsJson(rows, i),
      requirements: comparison.requirements.map((row) => requirementJson(row, i)),
      biteCurve: biteJson(comparison, i),
      problems: problemsJson(bars[i]),
    })),
    cautions: CAUTIONS,
  };
}

/** Whether a figure differs in any bar. */
export function isDifferent({ cells }: Pick<FigureRow, "cells">): boolean {
  return cells.some(({ same }) => !same);
}

function groupsJson(rows: readonly FigureRow[], bar: number) {
  const groups = FIGURE_GROUPS.map((group) => {
    const entries = rows
      .filter((row) => row.group === group)
      .map(({ key, cells }) => [key, cells[bar] ?? null]);
    return [group, Object.fromEntries(entries)];
  });
  return Object.fromEntries(groups);
}

function requirementJson(row: RequirementRow, bar: number) {
  const { figure, key, relation, atMPerS, ofEvent, cells } = row;
  return { figure, key, relation, atMPerS, ofEvent, ...cells[bar] };
}

function biteJson({ bite }: Comparison, bar: number) {
  const cells = bite?.bars[bar];
  return cells ? cells.map((cell, i) => pointJson(cell, bite?.closingMPerS[i] ?? null)) : null;
}

function pointJson({ ofMax, ofMean, ...bite }: BiteCell, closingMPerS: number | null) {
  return {
    closingMPerS,
    ...bite,
    maxDifferenceMm: ofMax.difference,
    maxPercent: ofMax.percent,
    meanDifferenceMm: ofMean.difference,
    meanPercent: ofMean.percent,
  };
}

function problemsJson(bar: ComparedBar | undefined) {
  const { source, problems = [] } = bar?.analysis ?? {};
  return source ? problems.map((problem) => problemJson(problem, source.lines)) : [];
}
