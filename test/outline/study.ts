/** From a text to its outline and the problems of it. */
import { expect } from "vitest";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { evaluate } from "../../geometry/language/evaluate.ts";
import { parse } from "../../geometry/language/parse.ts";
import type { Problem } from "../../geometry/language/problem.ts";
import type { ProblemCode } from "../../geometry/language/problem-codes.ts";
import { buildOutline } from "../../geometry/outline/build.ts";
import { checkOutline, DEFAULT_OUTLINE_RULES, type OutlineRules } from "../../geometry/outline/check.ts";
import type { Loop, Outline } from "../../geometry/outline/segment.ts";

export interface Study {
  readonly text: string;
  readonly outline: Outline | null;
  readonly draft: Outline | null;
  readonly problems: readonly Problem[];
}

/** The outline of a text, with the problems of the outline; problems of the language are the test's mistake. */
export function study(text: string, rules: OutlineRules = DEFAULT_OUTLINE_RULES): Study {
  const { tree, problems: syntax } = parse(text);
  const { design, problems: values } = evaluate(tree, { variant: null, figures: [] });
  const mistakes = [...syntax, ...values].filter(({ severity }) => severity === "error");
  expect(mistakes, text).toEqual([]);
  const { outline, draft, problems } = buildOutline(design);
  const layout = outline ? checkOutline(outline, design, rules) : [];
  return { text, outline, draft, problems: [...problems, ...layout] };
}

/** A whole file around an outline: plate, material and bore, unless `rest` brings others. */
export function barText(outline: string, rest = "bore 5 mm"): string {
  return `bar "Try"\nthickness 5 mm\ndensity 7850 kg/m^3\n${outline}\n${rest}\n`;
}

export const rangeText = ({ text }: Study, { range }: Problem): string => text.slice(range.start, range.end);

export const codesOf = ({ problems }: Study): ProblemCode[] => problems.map(({ code }) => code);

/** The outer loop of an outline that has no errors. */
export function outerOf(outline: string): Loop {
  const studied = study(barText(outline));
  expect(studied.problems.filter(({ severity }) => severity === "error")).toEqual([]);
  const outer = studied.outline?.outer;
  if (outer === undefined) throw new Error("the outline is missing");
  return outer;
}

/** The texts that come of applying each fix of a problem. */
export function fixedTexts({ text }: Study, problem: Problem): string[] {
  return problem.fixes.map(({ edits }) => applyEdits(text, edits));
}
