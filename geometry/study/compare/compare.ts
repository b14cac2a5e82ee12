/** Bars side by side: variants of one file, or several files. The first is the reference; the others are told against it. */
import type { Analysis } from "../../analysis/analyse.ts";
import type { Outline } from "../../outline/segment.ts";
import { type BiteComparison, compareBite } from "./compare-bite.ts";
import { compareFigures, type FigureRow } from "./compare-figures.ts";
import { compareRequirements, type RequirementRow } from "./compare-requirements.ts";
import { type OverlaidOutlines, overlaidOutlines } from "./overlaid-outlines.ts";

export type { BiteCell, BiteComparison } from "./compare-bite.ts";
export type { FigureCell, FigureRow } from "./compare-figures.ts";
export type { RequirementCell, RequirementRow } from "./compare-requirements.ts";
export type { OverlaidOutlines } from "./overlaid-outlines.ts";
export type { Verdict } from "./verdict.ts";

/** One bar to compare: where it is from, and what is known of it. */
export interface ComparedBar {
  readonly file: string;
  readonly analysis: Analysis;
}

/** What a column of the comparison is of. */
export interface BarHead {
  readonly file: string;
  /** The name in the file; `null` where it has none. */
  readonly name: string | null;
  /** `null` for the bar as it stands. */
  readonly variant: string | null;
  /** How many errors its text has in this variant, failed requirements among them. */
  readonly errors: number;
}

/** Bars side by side as plain data. Every list of cells has one for each bar, the reference first. */
export interface Comparison {
  readonly bars: readonly BarHead[];
  /** Every figure of the catalogue in its order; the bite curve is told in `bite`. */
  readonly figures: readonly FigureRow[];
  readonly requirements: readonly RequirementRow[];
  /** `null` where no bar has a bite. */
  readonly bite: BiteComparison | null;
  /** `null` where no bar has an outline. */
  readonly outlines: OverlaidOutlines<Outline> | null;
}

/**
 * Compare bars with the first of them.
 * @param bars at least one; the reference is compared with itself, which gives differences of 0
 * @throws RangeError without a bar
 */
export function compare(bars: readonly ComparedBar[]): Comparison {
  if (bars.length === 0) throw new RangeError("compare needs at least one bar");
  const analyses = bars.map(({ analysis }) => analysis);
  const assessments = analyses.map(({ assessment }) => assessment);
  const requirements = compareRequirements(assessments);
  return {
    bars: bars.map(headOf),
    figures: compareFigures(assessments, requirements),
    requirements,
    bite: compareBite(assessments),
    outlines: overlaidOutlines(analyses.map(({ outline }) => outline)),
  };
}

function headOf({ file, analysis: { design, variant, problems } }: ComparedBar): BarHead {
  const errors = problems.filter(({ severity }) => severity === "error").length;
  return { file, name: design.name, variant, errors };
}
