import { type Analysis, analyse } from "../analysis/analyse.ts";
import type { Source } from "../analysis/source.ts";
import { FIGURES } from "../figures/catalogue.ts";
import { fixed, presentMeasure, type UnitSystem, unitOf } from "../figures/present.ts";
import { roundToDigits } from "../language/number-text.ts";
import type { TextRange } from "../language/text.ts";

/** A line of figures above the bar or a variant. */
export interface Lens {
  readonly range: TextRange;
  readonly title: string;
  /** The variant that the figures are of; null for the bar as it stands. */
  readonly variant: string | null;
}

export interface LensOptions {
  readonly system?: UnitSystem;
  /** How a variant is analysed: a host hands in what keeps analyses it has made. */
  readonly analyseVariant?: (variant: string | null) => Analysis;
}

/** The figures of the bar, above its name, and of each variant, above its own. What is not known is left out. */
export function lenses(source: Source, options: LensOptions = {}): readonly Lens[] {
  const { system = "mm", analyseVariant = (variant) => analyse(source, { variant }) } = options;
  const done = new Set<string | null>();
  return source.tree.statements.flatMap((statement) => {
    if (statement.kind !== "bar" && statement.kind !== "variant") return [];
    const variant = statement.kind === "bar" ? null : statement.name;
    const isNameless = statement.kind === "variant" && variant === null;
    if (isNameless || done.has(variant)) return [];
    done.add(variant);
    return [{ range: statement.range, title: titleOf(analyseVariant(variant), system), variant }];
  });
}

/** A lens that came and went while a builder types would move the text up and down: it says that nothing is known. */
const NOTHING_KNOWN = "no figures yet";

function titleOf(analysis: Analysis, system: UnitSystem): string {
  const parts = [
    figureText(analysis, "massKg", system),
    gradeText(analysis),
    withWord(figureText(analysis, "tipSpeedMPerS", system), (speed) => `${speed} tip`),
    withWord(figureText(analysis, "cleanBiteMPerS", system), (speed) => `clean bite to ${speed}`),
  ];
  return parts.filter((part) => part !== null).join(" · ") || NOTHING_KNOWN;
}

function withWord(text: string | null, phrase: (text: string) => string): string | null {
  return text === null ? null : phrase(text);
}

/** Digits of a figure at a glance. */
const GLANCE_DIGITS = 3;

function figureText({ figures }: Analysis, key: string, system: UnitSystem): string | null {
  const figure = FIGURES.find((candidate) => candidate.key === key);
  const value = figure && figures[figure.group][key];
  if (!figure?.measure || typeof value !== "number") return null;
  const { perUnit } = unitOf(figure.measure, system);
  const rounded = roundToDigits(value / perUnit, GLANCE_DIGITS) * perUnit;
  const { text, unit } = presentMeasure(figure.measure, rounded, system);
  return `${text} ${unit}`;
}

/** A balance grade to a tenth; large ones whole. */
function gradeText({ figures }: Analysis): string | null {
  const grade = figures.mass["balanceGrade"];
  return typeof grade === "number" ? `G${fixed(grade, grade < 10 ? 1 : 0)}` : null;
}
