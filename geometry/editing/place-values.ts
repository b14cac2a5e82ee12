/** The value of expressions wherever they stand: inside a variant as that variant has them. */
import type { Analysis } from "../analysis/analyse.ts";
import { REQUIRABLE_FIGURES } from "../figures/catalogue.ts";
import type { Design } from "../language/design.ts";
import { evaluate } from "../language/evaluate.ts";
import type { Quantity } from "../language/quantity.ts";
import type { Expression, Statement } from "../language/tree.ts";

/** What is known at a place of the text. */
export interface PlaceValues {
  readonly design: Design;
  quantityOf(expression: Expression): Quantity | null;
}

/**
 * Finds the values that hold in a statement of the file: in a variant those of that variant, which need not be the one
 * that was analysed; elsewhere those of the analysis. A variant is evaluated at the first question about it.
 */
export function createPlaceValues(analysis: Analysis): (statement: Statement | null) => PlaceValues {
  const known = new Map<string, PlaceValues>();
  return (statement) => {
    const name = statement?.kind === "variant" ? statement.name : null;
    if (name === null || name === analysis.variant) return analysis;
    const values =
      known.get(name) ?? evaluate(analysis.source.tree, { variant: name, figures: REQUIRABLE_FIGURES });
    known.set(name, values);
    return values;
  };
}
