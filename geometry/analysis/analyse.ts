/**
 * From a source to everything the tool knows of it: the one door that the editor, the preview and the command line
 * come through. Text → tree → design → outline → figures → judgement, in one direction.
 */
import type { Assessment } from "../figures/assessment.ts";
import { figureValues, REQUIRABLE_FIGURES } from "../figures/catalogue.ts";
import { DEFAULT_SETTINGS, type Settings } from "../figures/settings.ts";
import type { Design } from "../language/design.ts";
import { evaluate } from "../language/evaluate.ts";
import type { Problem } from "../language/problem.ts";
import type { Quantity } from "../language/quantity.ts";
import type { Expression } from "../language/tree.ts";
import { buildOutline } from "../outline/build.ts";
import { checkOutline } from "../outline/check.ts";
import type { Outline } from "../outline/segment.ts";
import { assess } from "./assess.ts";
import { judge } from "./judge.ts";
import { inTextOrder, mergeProblems } from "./merge-problems.ts";
import type { Source } from "./source.ts";

export interface AnalyseOptions {
  /** Name of the variant; `null` for the bar as it stands. */
  readonly variant?: string | null;
  readonly settings?: Partial<Settings>;
}

/** One variant of a source, worked out: its shape and mass at once, the rest when it is first looked at. */
export interface Analysis {
  readonly source: Source;
  readonly variant: string | null;
  readonly design: Design;
  /** Present as soon as the loops could be built, even if they have problems. */
  readonly outline: Outline | null;
  /** Whether values and loops are without an error, so that the figures are those of a plate: nothing is judged. */
  readonly isSound: boolean;
  readonly assessment: Assessment;
  /** All figures, worked out when they are first looked at; `figureValue` gives one alone. */
  readonly figures: ReturnType<typeof figureValues>;
  /** All problems of the text and of this variant, in text order. */
  readonly problems: readonly Problem[];
  /** The value of any expression of the file, for hovers. */
  quantityOf(expression: Expression): Quantity | null;
}

/** Work out one variant of a source. Never throws for what a text may say; problems are data. */
export function analyse(source: Source, options: AnalyseOptions = {}): Analysis {
  const variant = options.variant ?? null;
  const settings: Settings = { ...DEFAULT_SETTINGS, ...options.settings };
  const evaluation = evaluate(source.tree, { variant, figures: REQUIRABLE_FIGURES });
  const { design, quantityOf } = evaluation;
  const { outline, problems: outlineProblems } = buildOutline(design);
  const regionProblems = outline ? checkOutline(outline, design, settings) : [];
  const found = new Set(regionProblems.map(({ code }) => code));
  const soundness = { isSimple: !found.has("loop-crosses-itself"), holdsAxis: !found.has("axis-outside") };
  const assessment = assess(design, outline, soundness, settings);
  const allProblems = () =>
    inTextOrder(
      [source.problems, evaluation.problems, outlineProblems, regionProblems, judge(assessment)].flat(),
    );
  let problems: Analysis["problems"] | null = null;
  const isSound =
    evaluation.isWhole &&
    outline !== null &&
    [...outlineProblems, ...regionProblems].every(({ severity }) => severity !== "error");
  let figures: Analysis["figures"] | null = null;
  return {
    source,
    variant,
    design,
    outline,
    isSound,
    assessment,
    get figures() {
      figures ??= figureValues(assessment);
      return figures;
    },
    get problems() {
      problems ??= allProblems();
      return problems;
    },
    quantityOf,
  };
}

/**
 * The problems of a file as a whole: of the bar as it stands and of each variant. What only a variant has says so in
 * its message.
 */
export function checkSource(source: Source, settings: Partial<Settings> = {}): readonly Problem[] {
  const base = analyse(source, { settings }).problems;
  const ofVariants = source.variants.map((variant) => ({
    variant,
    problems: analyse(source, { variant, settings }).problems,
  }));
  return mergeProblems(base, ofVariants);
}
