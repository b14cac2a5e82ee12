import type { Analysis } from "../analysis/analyse.ts";
import { literalOf } from "../language/evaluate/expression-shape.ts";
import { usualUnits } from "../language/evaluate/usual-unit.ts";
import { formatQuantity } from "../language/format-quantity.ts";
import type { TextRange } from "../language/text.ts";
import type { Expression } from "../language/tree.ts";
import { childrenOf, type TreeNode } from "../language/tree-walk.ts";
import { createPlaceValues, type PlaceValues } from "./place-values.ts";
import { valueText } from "./value-text.ts";

/** A text shown behind an expression, which is not part of the file. */
export interface InlayHint {
  readonly offset: number;
  readonly text: string;
  readonly tooltip: string;
}

/** What expressions in a range are worth, in the unit that the file uses; nothing for a number that is written out. */
export function inlayHints(analysis: Analysis, range: TextRange): readonly InlayHint[] {
  const { tree } = analysis.source;
  const unitFor = usualUnits(tree);
  const valuesOf = createPlaceValues(analysis);
  return tree.statements
    .filter((statement) => touches(statement.range, range))
    .flatMap((statement) => {
      const found = outermostIn({ type: "statement", node: statement }, range);
      return found.flatMap((expression) => hintOf(expression, valuesOf(statement), unitFor) ?? []);
    });
}

/** The expressions that stand in no other, in text order. */
function outermostIn(node: TreeNode, range: TextRange): readonly Expression[] {
  if (!touches(node.node.range, range)) return [];
  if (node.type === "expression") return [node.node];
  return childrenOf(node).flatMap((child) => outermostIn(child, range));
}

function touches(a: TextRange, b: TextRange): boolean {
  return a.start <= b.end && b.start <= a.end;
}

function hintOf(
  expression: Expression,
  { quantityOf }: PlaceValues,
  unitFor: ReturnType<typeof usualUnits>,
): InlayHint | null {
  if (literalOf(expression) !== null) return null;
  const quantity = quantityOf(expression);
  if (quantity === null) return null;
  const text = `= ${formatQuantity(quantity, unitFor(quantity.dimension))}`;
  return { offset: expression.range.end, text, tooltip: valueText(quantity) };
}
