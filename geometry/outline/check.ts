import type { Design } from "../language/design.ts";
import type { Problem } from "../language/problem.ts";
import type { TextRange } from "../language/text.ts";
import { cuttingProblems } from "./check/cutting-problems.ts";
import { layoutOf } from "./check/layout.ts";
import { layoutProblems } from "./check/layout-problems.ts";
import type { OutlineRules } from "./check/rules.ts";
import type { Outline } from "./segment.ts";

export { DEFAULT_OUTLINE_RULES, type OutlineRules } from "./check/rules.ts";

/**
 * What is wrong about an outline as a whole (errors: how its loops lie) and what a cutting shop would doubt
 * (warnings). `outline` is what `buildOutline` made of `design`. Exact on lines and arcs throughout.
 */
export function checkOutline(outline: Outline, design: Design, rules: OutlineRules): Problem[] {
  const layout = layoutOf(outline);
  const word = outlineWord(outline);
  return [...layoutProblems(layout, outline, word), ...cuttingProblems(layout, design, rules, word)];
}

/** The word `outline`: what concerns the whole statement need not underline all its lines. */
function outlineWord({ outer: { source } }: Outline): TextRange {
  return { start: source.start, end: Math.min(source.end, source.start + "outline".length) };
}
