import { REQUIRABLE_FIGURES } from "../figures/catalogue.ts";
import { sectionOf } from "../figures/section.ts";
import { evaluate } from "../language/evaluate.ts";
import type { SyntaxTree } from "../language/tree.ts";
import { buildOutline } from "../outline/build.ts";
import { type MovableLet, withValues } from "./movable-let.ts";
import type { Residual } from "./solve-zero.ts";

/**
 * The centroid in mm, from the spin axis, with other values in these lets; null where they make no plate. Only what it
 * needs is worked out: text and tree are as they were, and nothing is checked or judged.
 */
export function centroidAt(
  tree: SyntaxTree,
  variant: string | null,
  lets: readonly MovableLet[],
  values: readonly number[],
): Residual | null {
  const changed = withValues(tree, lets, values);
  const { design } = evaluate(changed, { variant, figures: REQUIRABLE_FIGURES });
  const { outline } = buildOutline(design);
  const section = outline && sectionOf(outline);
  if (!section?.centroidMm || section.areaMm2 <= 0) return null;
  return [section.centroidMm.x, section.centroidMm.y];
}
