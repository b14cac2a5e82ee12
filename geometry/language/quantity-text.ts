import { sameDimension, settle } from "./dimension.ts";
import { evaluate } from "./evaluate.ts";
import { parse } from "./parse.ts";
import type { Dimension, Quantity } from "./quantity.ts";
import { dimensionName, expectedPhrase } from "./quantity-kinds.ts";

export type QuantityText =
  | { readonly ok: true; readonly quantity: Quantity }
  | { readonly ok: false; readonly message: string };

/**
 * A value that stands alone, outside any file, such as an argument of the command line: `110 mm`, `4.5 in / 2`. Read as
 * a file reads it, so that units are known and checked the same way.
 */
export function quantityOfText(text: string, dimension: Dimension): QuantityText {
  const expected = expectedPhrase(dimension);
  const wrong = (message: string): QuantityText => ({ ok: false, message });
  if (text.trim() === "") return wrong(`expected ${expected}`);
  if (/[\r\n#]/.test(text)) return wrong(`"${text.trim()}" is not ${expected}`);
  const { tree, problems } = parse(`let value = ${text}`);
  const [statement, ...more] = tree.statements;
  const isValue = statement?.kind === "let" && statement.bounds === null && more.length === 0;
  const [problem] = problems;
  if (problem || !isValue) return wrong(problem?.message ?? `"${text.trim()}" is not ${expected}`);
  const { design, problems: found } = evaluate(tree, { variant: null, figures: [] });
  const quantity = design.lets[0]?.value;
  if (!quantity) {
    const failed = found.find(
      ({ severity, range }) => severity === "error" && range.end > "let value =".length,
    );
    return wrong(failed?.message ?? `"${text.trim()}" is not ${expected}`);
  }
  if (!Number.isFinite(quantity.value)) return wrong(`"${text.trim()}" is not ${expected}`);
  if (sameDimension(settle(quantity.dimension), dimension)) return { ok: true, quantity };
  return wrong(`"${text.trim()}" is ${dimensionName(quantity.dimension)}; expected ${expected}`);
}
