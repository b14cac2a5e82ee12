/** Figures that are one number, to be followed while a bar is varied: those of the catalogue, and the bite at a speed. */
import type { Analysis } from "../../analysis/analyse.ts";
import { requirementLabel } from "../../analysis/judge.ts";
import { FIGURES, REQUIRABLE_FIGURES } from "../../figures/catalogue.ts";
import type { Figure, Measure } from "../../figures/figure.ts";
import { nearestWord } from "../../language/nearest-word.ts";
import { readLine } from "./read-line.ts";

export interface StudiedFigure {
  /** Unique, its unit in the name; of the catalogue where it has it. */
  readonly key: string;
  readonly label: string;
  readonly measure: Measure;
  /** In the unit of the key; null where it cannot be known. */
  of(analysis: Analysis): number | null;
}

/** What cannot be followed as one number. */
const NOT_ONE_NUMBER: readonly (Measure | null)[] = [
  null,
  "point",
  "bounds",
  "secondMoments",
  "permissible",
  "word",
];

/** All figures of the catalogue that are one number, in its order. */
export const STUDIED_FIGURES: readonly StudiedFigure[] = FIGURES.flatMap((figure) => {
  const { key, label, measure } = figure;
  if (measure === null || NOT_ONE_NUMBER.includes(measure)) return [];
  return [{ key, label, measure, of: ({ assessment }) => numberOrNull(figure.of(assessment)) }];
});

/** What a builder looks at first. */
export const USUAL_FIGURES: readonly StudiedFigure[] = STUDIED_FIGURES.filter(({ key }) =>
  ["massKg", "inertiaKgM2", "energyJ", "balanceGrade", "cleanBiteMPerS"].includes(key),
);

/** The deepest bite at one closing speed. */
export function biteFigure(closingMPerS: number): StudiedFigure {
  return {
    key: `biteMmAt${closingMPerS}MPerS`,
    label: `Bite at ${closingMPerS} m/s`,
    measure: "length",
    of: ({ assessment: { bite } }) => numberOrNull(bite?.at(closingMPerS).maxMm),
  };
}

function numberOrNull(value: unknown): number | null {
  return typeof value === "number" && Number.isFinite(value) ? value : null;
}

/** A figure as a person names it: by its key, or as `require` would, `bite at 4 m/s` included; else why there is none. */
export function studiedFigure(words: string): StudiedFigure | { readonly message: string } {
  const name = words.trim();
  const byKey = STUDIED_FIGURES.find(({ key }) => key === name);
  if (byKey) return byKey;
  const figure = FIGURES.find(({ requirable }) => requirable?.name === name.split(/\s/)[0]);
  if (!figure?.requirable) return { message: noSuchFigure(name) };
  const { design, mistake } = readLine(`require ${name} <= ${figure.requirable.example}`);
  const requirement = design?.requirements[0];
  if (!requirement) return { message: mistake ?? noSuchFigure(name) };
  const { atMPerS } = requirement;
  return atMPerS === null
    ? ofCatalogue(figure)
    : { ...biteFigure(atMPerS), label: requirementLabel(requirement, figure) };
}

function ofCatalogue({ key }: Figure): StudiedFigure | { readonly message: string } {
  return STUDIED_FIGURES.find((figure) => figure.key === key) ?? { message: noSuchFigure(key) };
}

function noSuchFigure(name: string): string {
  const names = [
    ...REQUIRABLE_FIGURES.map((figure) => figure.name),
    ...STUDIED_FIGURES.map(({ key }) => key),
  ];
  const near = nearestWord(name, names);
  return near === null
    ? `There is no figure '${name}' that is one number. There are ${names.join(", ")}.`
    : `There is no figure '${name}'; did you mean ${near}?`;
}
