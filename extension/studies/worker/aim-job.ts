import type { Analysis } from "../../../geometry/analysis/analyse.ts";
import { readSource, type Source } from "../../../geometry/analysis/source.ts";
import { number, presentMeasure, type UnitSystem, unitOf } from "../../../geometry/figures/present.ts";
import type { Settings } from "../../../geometry/figures/settings.ts";
import type { TextEdit } from "../../../geometry/language/text.ts";
import {
  type AimedBar,
  type AimOutcome,
  type AimProgress,
  type AimRequest,
  type EffortName,
  type GoalStanding,
  type LimitStanding,
  searchAim,
  variantLines,
} from "../../../geometry/study/aim/aim.ts";
import { arrayOf, isNumber, isString, oneOf, orNull, shape } from "../../webview/checks.ts";
import { loopsPath } from "../../webview/page/path-data.ts";
import { isSettings } from "../messages.ts";
import type { Job } from "./job.ts";

/** A search for the best bar, or the end of one that was stopped. */
export interface AimInput {
  readonly text: string;
  readonly variant: string | null;
  readonly settings: Partial<Settings>;
  /** What stands behind the word `aim`; `null` for the line of the text. */
  readonly aim: string | null;
  readonly effort: EffortName;
  /** The values that a stopped search had found; `null` for a search. */
  readonly found: readonly (readonly number[])[] | null;
}

/** What a search has found by now, unrounded. */
export interface AimSoFar {
  readonly titles: readonly GoalTitle[];
  readonly lets: readonly { readonly name: string; readonly unit: string | null }[];
  /** For each bar a value a let, in its own unit. */
  readonly values: readonly (readonly number[])[];
  /** For each bar a value a goal, in the unit of its figure's key. */
  readonly goals: readonly (readonly number[])[];
  readonly isFeasible: boolean;
}

/** A text and a number for each system of units. */
export type InUnits<T> = Readonly<Record<UnitSystem, T>>;

/** A goal as the axis of a chart and as the title of a column. */
export interface GoalTitle {
  readonly sense: "most" | "least";
  readonly label: string;
  /** Empty for grades and counts. */
  readonly unit: InUnits<string>;
  /** What one shown unit is worth in the unit of the figure's key. */
  readonly perUnit: InUnits<number>;
}

export interface ShownGoal {
  /** In the unit of the figure's key. */
  readonly before: number | null;
  readonly after: number | null;
  readonly beforeText: InUnits<string>;
  readonly afterText: InUnits<string>;
  /** `+10.9 %`; empty where there is none. */
  readonly change: string;
}

export interface ShownLimit {
  readonly label: string;
  readonly origin: LimitStanding["origin"];
  readonly relation: "≤" | "≥";
  readonly limit: InUnits<string>;
  readonly value: InUnits<string>;
  readonly margin: InUnits<string>;
  readonly holds: boolean;
  readonly isReached: boolean;
}

export interface ShownBar {
  readonly lets: readonly {
    readonly name: string;
    readonly from: string;
    readonly to: string;
    readonly reached: "least" | "most" | null;
  }[];
  readonly goals: readonly ShownGoal[];
  readonly limits: readonly ShownLimit[];
  /** SVG path data in mm, y down. */
  readonly path: string;
  /** What changes the lets where they stand. */
  readonly edits: readonly TextEdit[];
  /** Why the lets are better left as they are: what would break in other variants. */
  readonly elsewhere: readonly string[];
  /** What a variant of its own holds. */
  readonly variantLines: readonly string[];
}

export interface AimResult {
  readonly goals: readonly GoalTitle[];
  /** One bar, or those along the line of two goals. Of an aim that cannot be reached the nearest. */
  readonly bars: readonly ShownBar[];
  /** Why no bar is offered; `null` where there is one. */
  readonly infeasible: string | null;
  readonly evaluations: number;
  /** The bar as it is. */
  readonly pathBefore: string;
  /** Least x, least y, greatest x, greatest y of all outlines, y up. */
  readonly boundsMm: readonly [number, number, number, number];
}

const EFFORTS: readonly EffortName[] = ["quick", "usual", "thorough"];
/** So many bars between two looks at what there is: a look takes as long as measuring one. */
const BARS_BETWEEN_LOOKS = 16;

export const aimJob: Job<"aim", AimInput, AimResult> = {
  kind: "aim",
  isInput: shape<AimInput>({
    text: isString,
    variant: orNull(isString),
    settings: isSettings,
    aim: orNull(isString),
    effort: oneOf(...EFFORTS),
    found: orNull(arrayOf(arrayOf(isNumber))),
  }),
  run: ({ text, aim, found, variant, settings, effort }, tell) => {
    const source = readSource(text);
    const request: AimRequest = {
      variant,
      settings,
      effort,
      ...(aim === null ? {} : { aim }),
      ...(found === null ? {} : { found }),
    };
    const steps = searchAim(source, request);
    let next = steps.next();
    while (next.done !== true) {
      const { evaluations, most } = next.value;
      if (evaluations % BARS_BETWEEN_LOOKS === 1)
        tell({ done: evaluations, total: most, soFar: soFarOf(next.value) });
      next = steps.next();
    }
    const outcome = next.value;
    return outcome.status === "refused"
      ? { refused: outcome.message }
      : { result: resultOf(source, variant, outcome) };
  },
};

function soFarOf(progress: AimProgress): AimSoFar {
  const best = progress.best();
  const { goals: told, lets } = progress.about;
  return {
    titles: told.map(titleOf),
    lets,
    values: best.map(({ values }) => values),
    goals: best.map(({ goals }) => goals),
    isFeasible: best.length > 0 && best.every(({ isFeasible }) => isFeasible),
  };
}

function resultOf(
  source: Source,
  variant: string | null,
  outcome: Exclude<AimOutcome, { status: "refused" }>,
): AimResult {
  const bars = outcome.status === "found" ? outcome.bars : outcome.nearest ? [outcome.nearest] : [];
  const [first] = bars;
  return {
    goals: first?.goals.map(titleOf) ?? [],
    bars: bars.map((bar) => shownBar(source, variant, bar)),
    infeasible: outcome.status === "infeasible" ? outcome.message : null,
    evaluations: outcome.evaluations,
    pathBefore: first ? pathOf(first.before) : "",
    boundsMm: boundsOf(first ? [first.before, ...bars.map(({ analysis }) => analysis)] : []),
  };
}

function titleOf({ sense, label, measure }: Pick<GoalStanding, "sense" | "label" | "measure">): GoalTitle {
  const [mm, inch] = [unitOf(measure, "mm"), unitOf(measure, "in")];
  return {
    sense,
    label,
    unit: { mm: mm.unit, in: inch.unit },
    perUnit: { mm: mm.perUnit, in: inch.perUnit },
  };
}

function shownBar(source: Source, variant: string | null, bar: AimedBar): ShownBar {
  return {
    lets: bar.lets.map(({ name, from, to, reached }) => ({ name, from, to, reached })),
    goals: bar.goals.map(shownGoal),
    limits: bar.limits.map(shownLimit),
    path: pathOf(bar.analysis),
    edits: bar.edits,
    elsewhere: bar.elsewhere.map(({ message }) => message),
    variantLines: variantLines(source, variant, bar.lets),
  };
}

function shownGoal({ measure, before, after }: GoalStanding): ShownGoal {
  const share = before && after !== null ? 100 * (after / before - 1) : null;
  return {
    before,
    after,
    beforeText: inUnits(measure, before),
    afterText: inUnits(measure, after),
    change: share === null ? "" : `${share > 0 ? "+" : ""}${number(share, 3)} %`,
  };
}

function shownLimit({
  label,
  origin,
  measure,
  relation,
  limit,
  value,
  margin,
  holds,
  isReached,
}: LimitStanding): ShownLimit {
  return {
    label,
    origin,
    relation: relation === "<=" ? "≤" : "≥",
    limit: inUnits(measure, limit),
    value: inUnits(measure, value),
    margin: inUnits(measure, margin),
    holds,
    isReached,
  };
}

function inUnits(measure: GoalStanding["measure"], value: number | null): InUnits<string> {
  const textIn = (units: UnitSystem) => {
    const { text, unit } = presentMeasure(measure, value, units);
    return unit === "" ? text : `${text} ${unit}`;
  };
  return { mm: textIn("mm"), in: textIn("in") };
}

function pathOf({ outline }: Analysis): string {
  return outline ? loopsPath([outline.outer, ...outline.inner]) : "";
}

function boundsOf(analyses: readonly Analysis[]): AimResult["boundsMm"] {
  const bounds = analyses.flatMap(({ assessment: { section } }) => (section ? [section.boundsMm] : []));
  if (bounds.length === 0) return [-1, -1, 1, 1];
  return [
    Math.min(...bounds.map(([x0]) => x0)),
    Math.min(...bounds.map(([, y0]) => y0)),
    Math.max(...bounds.map(([, , x1]) => x1)),
    Math.max(...bounds.map(([, , , y1]) => y1)),
  ];
}
