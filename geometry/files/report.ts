/**
 * The report as data: sections of labelled values and one table. The terminal, the page to print and the preview lay
 * it out each in their own way, so none of them can say something else.
 */

import type { Analysis } from "../analysis/analyse.ts";
import { biteSpinningUp } from "../analysis/bite-spinning-up.ts";
import { requirementLabel, standingOf } from "../analysis/judge.ts";
import { type WantedDepth, wantedDepths } from "../analysis/wanted-depths.ts";
import type { BitePoint } from "../bite/bite.ts";
import { type BudgetSums, budgetSums, type LeftOff, leaveOff } from "../figures/budget.ts";
import { FIGURES, figureValue } from "../figures/catalogue.ts";
import { FIGURE_GROUPS, type FigureGroup, isToldUnknown } from "../figures/figure.ts";
import {
  number,
  type Presented,
  presentFigure,
  presentMeasure,
  type UnitSystem,
  unitOf,
} from "../figures/present.ts";
import type { BudgetDesign, Design } from "../language/design.ts";
import { statedLimits } from "../language/stated-limits.ts";
import { type SteeringTable, steeringTable } from "./steering-table.ts";
import { strikePlace } from "./strike-place.ts";

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
  /** From the depth that one strike in ten does not exceed to the one that nine in ten do not. */
  readonly middle: string;
  readonly square: string;
  readonly ideal: string;
  readonly depthShare: number;
}

/** One place that strikes first, at the fastest closing speed of the file. */
export interface StrikeRow {
  readonly where: string;
  readonly share: string;
  readonly depth: string;
  readonly angle: string;
}

/** The bite at a part of the spin, at the fastest closing speed. */
export interface SpinRow {
  readonly spin: string;
  readonly deepest: string;
  readonly mean: string;
  readonly square: string;
}

/** What a wanted depth takes. */
export interface DepthRow {
  readonly depth: string;
  readonly closing: string;
  readonly spin: string;
}

export interface RequirementRow {
  readonly label: string;
  readonly value: string;
  readonly limit: string;
  readonly holds: boolean | null;
}

/** What the robot is made of, the bar first. */
export interface BudgetRow {
  readonly name: string;
  readonly count: string;
  readonly each: string;
  readonly mass: string;
  /** Of all; a dash where that is not known. */
  readonly share: string;
}

/** What would be won by leaving a part off. */
export interface LeftOffRow {
  readonly name: string;
  readonly saves: string;
  /** How the budget would stand without it. */
  readonly without: string;
}

/** A report without its tables of the bite: what stands beside a chart. */
export interface ReportSummary {
  readonly title: string;
  readonly variant: string | null;
  /** Plate, material and spin in one line. */
  readonly subtitle: string;
  readonly sections: readonly ReportSection[];
  readonly requirements: readonly RequirementRow[];
}

export interface Report extends ReportSummary {
  /** Null for a file without a budget. */
  readonly budget: { readonly rows: readonly BudgetRow[]; readonly leftOff: readonly LeftOffRow[] } | null;
  /** Null for a file without a robot of which enough is said. */
  readonly steering: SteeringTable | null;
  readonly bite: {
    readonly speedUnit: string;
    readonly depthUnit: string;
    /** What the bar meets, and how: `a rounded edge of 5 mm, 12 mm aside of the spin axis`. */
    readonly target: string;
    readonly rows: readonly BiteRow[];
    /** The fastest closing speed, with its unit, and what strikes first there. */
    readonly fastest: string;
    readonly strikes: readonly StrikeRow[];
    readonly depths: readonly DepthRow[];
    readonly spinningUp: readonly SpinRow[];
  };
}

/** What the groups of figures are called where people read them. */
export const GROUP_TITLES: Readonly<Record<FigureGroup, string>> = {
  shape: "Shape",
  mass: "Mass and balance",
  spin: "Spin",
  bite: "Bite",
  robot: "Steering with the bar spinning",
  opponent: "A blow",
  budget: "Weight budget",
  event: "At the event",
};

/** Lay out an analysis as a report in one system of units. */
export function reportOf(analysis: Analysis, system: UnitSystem): Report {
  return {
    ...summaryOf(analysis, system),
    budget: budgetTable(analysis, system),
    steering: steeringTable(analysis, system),
    bite: biteTable(analysis, system),
  };
}

/** The same without the tables of the bite, which take longer to work out than all the rest. */
export function summaryOf(analysis: Analysis, system: UnitSystem): ReportSummary {
  const { design, variant } = analysis;
  return {
    title: design.name ?? "Unnamed bar",
    variant,
    subtitle: subtitleOf(analysis, system),
    sections: FIGURE_GROUPS.flatMap((group) => sectionOfGroup(group, analysis, system) ?? []),
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

/** Null where nothing of the group is known and nobody would miss it. */
function sectionOfGroup(group: FigureGroup, analysis: Analysis, system: UnitSystem): ReportSection | null {
  const figures = FIGURES.filter((figure) => figure.group === group && figure.measure !== null);
  const values = figures.map(({ key }) => figureValue(key, analysis.assessment));
  if (!isToldUnknown(group) && values.every((value) => value === null)) return null;
  const rows = figures.map((figure, i) => ({
    key: figure.key,
    label: figure.label,
    meaning: figure.meaning,
    value: presentFigure(figure, values[i] ?? null, system),
  }));
  return { group, title: GROUP_TITLES[group], rows };
}

function budgetTable({ assessment }: Analysis, system: UnitSystem): Report["budget"] {
  const { budget } = assessment.design;
  const sums = budgetSums(assessment);
  if (budget === null || sums === null) return null;
  const mass = (kg: number | null) => join(presentMeasure("mass", kg, system));
  const row = (name: string, count: number, eachKg: number | null): BudgetRow => {
    const share = eachKg === null || !sums.totalMassKg ? null : (100 * eachKg * count) / sums.totalMassKg;
    return {
      name,
      count: `${count}`,
      each: mass(eachKg),
      mass: mass(eachKg === null ? null : eachKg * count),
      share: share === null ? "–" : `${number(share, 3)} %`,
    };
  };
  return {
    rows: [
      row("the bar, by its outline", 1, assessment.mass?.massKg ?? null),
      ...budget.parts.map(({ name, count, massKg }) => row(name, count, massKg)),
    ],
    leftOff: isLeavingAsked(budget, sums)
      ? leaveOff(budget, sums.marginKg).map((off) => leftOffRow(off, mass))
      : [],
  };
}

/** What could be left off is told to those who have to, and to those who have marked what. */
function isLeavingAsked({ parts }: BudgetDesign, { marginKg }: BudgetSums): boolean {
  return parts.some(({ isSpare }) => isSpare) || (marginKg !== null && marginKg < 0);
}

function leftOffRow({ part, savesKg, marginKg }: LeftOff, mass: (kg: number) => string): LeftOffRow {
  const side = marginKg !== null && marginKg < 0 ? "over" : "to spare";
  return {
    name: part.name,
    saves: mass(savesKg),
    without: marginKg === null ? "–" : `${mass(Math.abs(marginKg))} ${side}`,
  };
}

/** The most rows a table of closing speeds has: round steps are chosen to stay within. */
const MOST_BITE_ROWS = 13;

function biteTable(analysis: Analysis, system: UnitSystem): Report["bite"] {
  const [speed, depth] = [unitOf("speed", system), unitOf("length", system)];
  const { assessment } = analysis;
  const { bite, design } = assessment;
  const units = { speedUnit: speed.unit, depthUnit: depth.unit, target: targetText(design.target, system) };
  const fastest = bite?.curve.at(-1);
  if (!bite || !fastest) return { ...units, rows: [], fastest: "", strikes: [], depths: [], spinningUp: [] };
  const picked = roundSpeeds(bite.curve, speed.perUnit).map((closingMPerS) => ({
    closingMPerS,
    ...bite.at(closingMPerS),
  }));
  const deepest = Math.max(...picked.map(({ maxMm }) => maxMm), 0);
  const length = (mm: number) => (mm / depth.perUnit).toFixed(system === "mm" ? 2 : 3);
  const rows = picked.map((at) => ({
    closing: number(at.closingMPerS / speed.perUnit, 6),
    deepest: length(at.maxMm),
    mean: length(at.meanMm),
    middle: `${length(at.tenthMm)}–${length(at.ninetiethMm)}`,
    square: `${Math.round(at.squareShare * 100)} %`,
    ideal: at.idealMm === null ? "–" : length(at.idealMm),
    depthShare: deepest > 0 ? at.maxMm / deepest : 0,
  }));
  return {
    ...units,
    rows,
    fastest: join(presentMeasure("speed", fastest.closingMPerS, system)),
    strikes: strikeRows(analysis, fastest, system),
    depths: wantedDepths(assessment, depth.perUnit).map((wanted) => depthRow(wanted, system)),
    spinningUp: biteSpinningUp(assessment).map(({ rpm, maxMm, meanMm, squareShare }) => ({
      spin: number(rpm, 5),
      deepest: length(maxMm),
      mean: length(meanMm),
      square: `${Math.round(100 * squareShare)} %`,
    })),
  };
}

/** What a file aims at, in words. */
function targetText({ kind, radiusMm, offsetMm }: Design["target"], system: UnitSystem): string {
  const length = (mm: number) => join(presentMeasure("length", Math.abs(mm), system));
  const what = {
    edge: "an edge",
    face: "a face square to the approach",
    round: `a rounded edge of ${length(radiusMm)}`,
  };
  if (offsetMm === 0 || kind === "face") return what[kind];
  const side = offsetMm > 0 ? "to" : "from";
  return `${what[kind]} that comes in ${length(offsetMm)} off the spin axis, on the side ${side} which the bar strikes`;
}

/** A place with less than this share of the strikes is not told. */
const LEAST_SHARE = 0.001;
/** A spiral is many segments: past this many places, the rest is one row. */
const MOST_STRIKE_ROWS = 8;

function strikeRows(
  analysis: Analysis,
  { strikes, passedShare }: BitePoint,
  system: UnitSystem,
): StrikeRow[] {
  const { unit, perUnit } = unitOf("length", system);
  const length = (mm: number) => (mm / perUnit).toFixed(system === "mm" ? 1 : 2);
  const percent = (share: number) => `${number(100 * share, 3)} %`;
  const degrees = (rad: number) => Math.round((rad * 180) / Math.PI);
  const told = strikes.filter(({ share }) => share >= LEAST_SHARE).sort((a, b) => b.share - a.share);
  const rest = told.splice(told.length > MOST_STRIKE_ROWS + 1 ? MOST_STRIKE_ROWS : told.length);
  const rows = told.map(({ place, share, depthMm, strikeAngleRad }) => ({
    where: strikePlace(analysis, place, system),
    share: percent(share),
    depth: `${length(depthMm.least)}–${length(depthMm.most)} ${unit}`,
    angle: `${degrees(strikeAngleRad.least)}–${degrees(strikeAngleRad.most)}°`,
  }));
  if (rest.length > 0) {
    const share = percent(rest.reduce((sum, strike) => sum + strike.share, 0));
    rows.push({ where: `${rest.length} places more`, share, depth: "–", angle: "–" });
  }
  if (passedShare < LEAST_SHARE) return rows;
  return [...rows, { where: "passes the axis unmet", share: percent(passedShare), depth: "–", angle: "–" }];
}

function depthRow({ depthMm, closingMPerS, rpm }: WantedDepth, system: UnitSystem): DepthRow {
  const never = "not reached";
  return {
    depth: join(presentMeasure("length", depthMm, system)),
    closing: closingMPerS === null ? never : `from ${join(presentMeasure("speed", closingMPerS, system))}`,
    spin: rpm === null ? never : `up to ${number(rpm, 4)} rpm`,
  };
}

/** Closing speeds a person would choose: multiples of 1, 2, 2.5 or 5 times a power of ten in the shown unit. */
export function roundSpeeds(curve: readonly { readonly closingMPerS: number }[], perUnit: number): number[] {
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
  return statedLimits(analysis.design).flatMap((requirement) => {
    const standing = standingOf(requirement, analysis.assessment);
    if (!standing) return [];
    const { figure, value, limit, holds } = standing;
    const measure = requirement.atMPerS === null ? (figure.measure ?? "count") : "length";
    return {
      label: requirementLabel(requirement, figure),
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
