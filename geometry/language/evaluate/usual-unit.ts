import { sameDimension } from "../dimension.ts";
import type { Dimension } from "../quantity.ts";
import { quantityKind } from "../quantity-kinds.ts";
import type { Expression, SyntaxTree } from "../tree.ts";
import { visitExpressions } from "../tree-walk.ts";
import { unitFactor } from "../units.ts";

interface UnitCount {
  readonly unit: string;
  readonly dimension: Dimension;
  readonly count: number;
}

/**
 * The unit in which a file writes values of a kind: the one it uses most, the first of equals; the trade's where it
 * uses none. The file is counted through at the first question and not before.
 */
export function usualUnits(tree: SyntaxTree): (dimension: Dimension) => string {
  let counts: readonly UnitCount[] | null = null;
  return (dimension) => {
    counts ??= countUnits(tree);
    const most = counts.find((entry) => sameDimension(entry.dimension, dimension));
    return most?.unit ?? quantityKind(dimension).unit;
  };
}

/** Every unit of the file, the most used first. */
function countUnits(tree: SyntaxTree): readonly UnitCount[] {
  const counts = new Map<string, UnitCount>();
  const count = (part: Expression): void => {
    if ((part.kind !== "number" && part.kind !== "group") || part.unit === null) return;
    const unit = part.unit.text;
    const known = counts.get(unit);
    const dimension = known?.dimension ?? unitFactor(part.unit)?.dimension;
    if (dimension !== undefined) counts.set(unit, { unit, dimension, count: (known?.count ?? 0) + 1 });
  };
  visitExpressions(tree, count);
  return [...counts.values()].sort((a, b) => b.count - a.count);
}
