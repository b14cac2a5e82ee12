/**
 * The report as data: sections of labelled values and one table. The terminal, the page to print and the preview lay
 * it out each in their own way, so none of them can say something else.
 */
import type { Analysis } from "../analysis/analyse.ts";
import { standingOf } from "../analysis/judge.ts";
import { FIGURES } from "../figures/catalogue.ts";
import { FIGURE_GROUPS, type FigureGroup } from "../figures/figure.ts";
import {
  number,
  type Presented,
  presentFigure,
  presentMeasure,
  type UnitSystem,
  unitOf,
} from "../figures/present.ts";

export interface ReportRow {
  readonly key: string;
  readonly label: string;
  readonly value: Presented;
  readonly meaning: string;
}

export interface ReportSection {
  readonly group: FigureGroup;
  readonly title: string;
  readonly rows: readonly ReportRow[];
}

/** The bite curve, thinned to what a table can hold; `depthShare` (0…1) is the deepest bite against the table's deepest. */
export interface BiteRow {
  readonly closing: string;
  readonly deepest: string;
  readonly mean: string;
  readonly square: string;
  readonly ideal: string;
  readonly depthShare: number;
}

export interface RequirementRow {
  readonly label: string;
  readonly value: string;
  readonly limit: string;
  readonly holds: boolean | null;
}

export interface Report {
  readonly title: string;
  readonly variant: string | null;
  /** Plate, material and spin in one line. */
  readonly subtitle: string;
  readonly sections: readonly ReportSection[];
  readonly bite: {
    readonly speedUnit: string;
    readonly depthUnit: string;
    readonly rows: readonly BiteRow[];
  };
  readonly requirements: readonly RequirementRow[];
}

const TITLES: Readonly<Record<FigureGroup, string>> = {
  shape: "Shape",
  mass: "Mass and balance",
  spin: "Spin",
  bite: "Bite",
};

/** Lay out an analysis as a report in one system of units. */
export function reportOf(analysis: Analysis, system: UnitSystem): Report {
  const { design, variant } = analysis;
  return {
    title: design.name ?? "Unnamed bar",
    variant,
    subtitle: subtitleOf(analysis, system),
    sections: FIGURE_GROUPS.map((group) => sectionOfGroup(group, analysis, system)),
    bite: biteTable(analysis, system),
    requirements: requirementRows(analysis, system),
  };
}

function subtitleOf({ design }: Analysis, system: UnitSystem): string {
  const { thicknessMm, material, densityKgPerM3, spin } = design;
  const plate = thicknessMm ? join(presentMeasure("length", thicknessMm.value, system)) : null;
  const stuff = material?.title ?? (densityKgPerM3 === null ? null : `${number(densityKgPerM3, 4)} kg/m³`);
  const parts = [plate && `${plate} plate`, stuff, spin && `${number(spin.rpm, 6)} rpm ${spin.direction}`];
  return parts.filter(Boolean).join(" · ");
}

function sectionOfGroup(group: FigureGroup, analysis: Analysis, system: UnitSystem): ReportSection {
  const rows = FIGURES.filter((figure) => figure.group === group && figure.measure !== null).map(
    (figure) => ({
      key: figure.key,
      label: figure.label,
      meaning: figure.meaning,
      value: presentFigure(figure, analysis.figures[group][figure.key] ?? null, system),
    }),
  );
  return { group, title: TITLES[group], rows };
}

/** The most rows a table of closing speeds has: round steps are chosen to stay within. */
const MOST_BITE_ROWS = 13;

function biteTable({ assessment }: Analysis, system: UnitSystem): Report["bite"] {
  const [speed, depth] = [unitOf("speed", system), unitOf("length", system)];
  const units = { speedUnit: speed.unit, depthUnit: depth.unit };
  const { bite } = assessment;
  if (!bite) return { ...units, rows: [] };
  const picked = roundSpeeds(bite.curve, speed.perUnit).map((closingMPerS) => ({
    closingMPerS,
    ...bite.at(closingMPerS),
  }));
  const deepest = Math.max(...picked.map(({ maxMm }) => maxMm), 0);
  const length = (mm: number | null) =>
    mm === null ? "–" : (mm / depth.perUnit).toFixed(system === "mm" ? 2 : 3);
  const rows = picked.map((at) => ({
    closing: number(at.closingMPerS / speed.perUnit, 6),
    deepest: length(at.maxMm),
    mean: length(at.meanMm),
    square: `${Math.round(at.squareShare * 100)} %`,
    ideal: length(at.idealMm),
    depthShare: deepest > 0 ? at.maxMm / deepest : 0,
  }));
  return { ...units, rows };
}

/** Closing speeds a person would choose: multiples of 1, 2, 2.5 or 5 times a power of ten in the shown unit. */
function roundSpeeds(curve: readonly { readonly closingMPerS: number }[], perUnit: number): number[] {
  const from = (curve.at(0)?.closingMPerS ?? 0) / perUnit;
  const to = (curve.at(-1)?.closingMPerS ?? 0) / perUnit;
  const rough = (to - from) / (MOST_BITE_ROWS - 1);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 2.5, 5, 10].find((factor) => factor * power >= rough * (1 - 1e-9)) ?? 10);
  const [first, last] = [Math.ceil(from / step - 1e-9), Math.floor(to / step + 1e-9)];
  const multiples = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
  return multiples.filter((shown) => shown > 0).map((shown) => shown * perUnit);
}

function requirementRows(analysis: Analysis, system: UnitSystem): RequirementRow[] {
  return analysis.design.requirements.flatMap((requirement) => {
    const standing = standingOf(requirement, analysis.assessment);
    if (!standing) return [];
    const { figure, value, limit, holds } = standing;
    const measure = requirement.atMPerS === null ? (figure.measure ?? "count") : "length";
    const label =
      requirement.atMPerS === null ? figure.label : `Bite at ${number(requirement.atMPerS, 4)} m/s`;
    return {
      label,
      value: join(presentMeasure(measure, value, system)),
      limit: `${requirement.relation === "<=" ? "at most" : "at least"} ${join(presentMeasure(measure, limit, system))}`,
      holds,
    };
  });
}

/** Value and unit in one text; the degree sign stands close. */
export function join({ text, unit }: Presented): string {
  if (unit === "") return text;
  return unit === "°" ? `${text}°` : `${text} ${unit}`;
}
