/** From the syntax tree to the design: every name resolved, every value of its kind, for one variant of the file. */
import type { Design } from "./design.ts";
import { evaluateAim } from "./evaluate/aim.ts";
import { evaluateBalance } from "./evaluate/balance.ts";
import { evaluateBlocks } from "./evaluate/blocks/evaluate-blocks.ts";
import { duplicates } from "./evaluate/duplicates.ts";
import { evaluateFileLets, letStatements, letValues } from "./evaluate/file-lets.ts";
import { evaluateBore, evaluateHoles } from "./evaluate/holes.ts";
import { missingStatements } from "./evaluate/missing.ts";
import { evaluateOutline } from "./evaluate/paths.ts";
import { evaluatePlate } from "./evaluate/plate.ts";
import { createReporter } from "./evaluate/reporter.ts";
import { evaluateRequirements } from "./evaluate/requirements.ts";
import { EDGE, evaluateApproach, evaluateSpin, evaluateTarget } from "./evaluate/settings.ts";
import { unusedLets } from "./evaluate/unused-lets.ts";
import { usualUnits } from "./evaluate/usual-unit.ts";
import type { Scope } from "./evaluate/values.ts";
import { checkOverrides, findVariant, settingOf } from "./evaluate/variants.ts";
import type { Problem } from "./problem.ts";
import type { Quantity } from "./quantity.ts";
import type { RequirableFigure } from "./requirable.ts";
import type { Expression, SyntaxTree, VariantStatement } from "./tree.ts";

export { variantNames } from "./evaluate/variants.ts";

export interface EvaluateOptions {
  /** Name of the variant; null, or a name that no variant has, for the bar as it stands. */
  readonly variant: string | null;
  /** What `require` can name. */
  readonly figures: readonly RequirableFigure[];
}

export interface Evaluation {
  readonly design: Design;
  /** False where a value is wrong and what hangs on it was left out of the design. */
  readonly isWhole: boolean;
  /** In text order. What is wrong with the file beside its values is found when this is first looked at. */
  readonly problems: readonly Problem[];
  /** The value of any expression of the tree in this variant; null where it has none. */
  readonly quantityOf: (expression: Expression) => Quantity | null;
}

/**
 * Evaluates a file for one variant. Never throws for what a text may say. Problems of the file itself are the same for
 * every variant; of a variant's own values only those of the chosen one are looked at.
 */
export function evaluate(tree: SyntaxTree, { variant: name, figures }: EvaluateOptions): Evaluation {
  const { report, problems } = createReporter(tree.text.length);
  const variant = findVariant(tree, name);
  const lets = letStatements(tree);
  const surroundings = { text: tree.text, usualUnit: usualUnits(tree), report };
  const values = evaluateFileLets(lets, variant, surroundings);
  const scope: Scope = { ...surroundings, expressions: values.expressions };
  const design: Design = {
    name: tree.statements.find((statement) => statement.kind === "bar")?.name ?? null,
    variant: name,
    lets: letValues(scope, lets, values),
    ...evaluateSettings(scope, tree, variant),
    ...evaluateShape(scope, tree, variant),
    requirements: evaluateRequirements(scope, tree, variant, figures),
    balance: settingOf(tree, null, "balance", (statement) => evaluateBalance(scope, statement, lets)).value,
    aim: settingOf(tree, null, "aim", (statement) => evaluateAim(scope, statement, lets, figures)).value,
    ...evaluateBlocks(scope, tree, figures),
  };
  const allProblems = () => {
    for (const problem of missingStatements(tree, variant)) report(problem);
    for (const problem of unusedLets(tree, lets)) report(problem);
    for (const problem of duplicates(tree)) report(problem);
    checkOverrides(tree, lets, report);
    return problems();
  };
  let found: readonly Problem[] | null = null;
  return {
    design,
    isWhole: problems().every(({ severity }) => severity !== "error"),
    get problems() {
      found ??= allProblems();
      return found;
    },
    quantityOf: (expression) => values.quietly.value(expression),
  };
}

function evaluateShape(
  scope: Scope,
  tree: SyntaxTree,
  variant: VariantStatement | null,
): Pick<Design, "outline" | "holes"> {
  const bore = settingOf(tree, variant, "bore", (statement) => evaluateBore(scope, statement)).value;
  const holes = evaluateHoles(scope, tree.statements);
  return {
    outline: settingOf(tree, null, "outline", (statement) => evaluateOutline(scope, statement)).value,
    holes: bore === null ? holes : [bore, ...holes],
  };
}

function evaluateSettings(
  scope: Scope,
  tree: SyntaxTree,
  variant: VariantStatement | null,
): Pick<Design, "thicknessMm" | "material" | "densityKgPerM3" | "yieldMPa" | "spin" | "approach" | "target"> {
  const target = settingOf(tree, variant, "target", (statement) => evaluateTarget(scope, statement)).value;
  return {
    ...evaluatePlate(scope, tree, variant),
    spin: settingOf(tree, variant, "spin", (statement) => evaluateSpin(scope, statement)).value,
    approach: settingOf(tree, variant, "approach", (statement) => evaluateApproach(scope, statement)).value,
    target: target ?? EDGE,
  };
}
