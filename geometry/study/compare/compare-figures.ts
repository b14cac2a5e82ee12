import type { Assessment } from "../../figures/assessment.ts";
import { FIGURES, figureValues } from "../../figures/catalogue.ts";
import type { Figure, FigureGroup, FigureValue, Measure } from "../../figures/figure.ts";
import type { RequirementRow } from "./compare-requirements.ts";
import { type Difference, differenceOf, partsScale } from "./difference.ts";
import { type Verdict, verdictOn } from "./verdict.ts";

/** One figure of one bar, and how it stands to the reference's. */
export interface FigureCell extends Difference {
  /** In the unit of the row's key; `null` where it is not known. */
  readonly value: FigureValue;
  /** By the requirements on the figure, else by what is usually wanted of it; `null` where neither tells. */
  readonly verdict: Verdict | null;
}

/** One figure of the catalogue, of every bar. */
export interface FigureRow {
  readonly group: FigureGroup;
  /** Of the catalogue, its unit in the name. */
  readonly key: string;
  readonly label: string;
  readonly meaning: string;
  readonly measure: Measure | null;
  readonly cells: readonly FigureCell[];
}

/** Every figure of the catalogue but the bite curve, which is no single figure. */
export function compareFigures(
  bars: readonly Assessment[],
  requirements: readonly RequirementRow[],
): FigureRow[] {
  const values = bars.map(figureValues);
  return FIGURES.filter(isSingle).map((figure) => {
    const { group, key, label, meaning, measure } = figure;
    const limits = requirements.filter((row) => row.key === key);
    const scale = Math.max(...bars.map((bar) => partsScale(measure, bar)));
    const [reference = null, ...others] = values.map((one) => one[group][key] ?? null);
    const cells = [reference, ...others].map((value, i): FigureCell => {
      const against = differenceOf(reference, value, measure, scale);
      return { value, ...against, verdict: verdictOf(figure, against, value, limitVerdicts(limits, i)) };
    });
    return { group, key, label, meaning, measure, cells };
  });
}

function isSingle({ requirable }: Figure): boolean {
  return !requirable?.takesSpeed;
}

function limitVerdicts(limits: readonly RequirementRow[], bar: number): readonly (Verdict | null)[] {
  return limits.map(({ cells }) => cells[bar]?.verdict ?? null);
}

function verdictOf(
  { better }: Figure,
  { difference, same }: Difference,
  value: FigureValue,
  byLimits: readonly (Verdict | null)[],
): Verdict | null {
  // One limit newly broken is not outweighed by another that is newly kept.
  for (const verdict of ["worse", "better"] as const) if (byLimits.includes(verdict)) return verdict;
  if (value === null) return null;
  if (same) return "same";
  return better === null || typeof difference !== "number" ? null : verdictOn(difference, better);
}
