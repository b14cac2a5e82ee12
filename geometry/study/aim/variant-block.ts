import type { Source } from "../../analysis/source.ts";
import { findVariant } from "../../language/evaluate/variants.ts";
import type { TextEdit } from "../../language/text.ts";
import type { LetMove } from "../balancing.ts";
import { blockAtEnd } from "./block-at-end.ts";

/**
 * The found values as a variant of its own, behind the last statement of the file: the bar that was aimed for beside the
 * bar as it is.
 * @param name one that no variant of the file has, without quotation marks
 */
export function variantBlock(
  source: Source,
  variant: string | null,
  lets: readonly LetMove[],
  name: string,
): TextEdit {
  return blockAtEnd(source.text, name, variantLines(source, variant, lets));
}

/** What the new variant overrides; of the variant that was changed it keeps what else that does. */
export function variantLines(
  { text, tree }: Source,
  variant: string | null,
  lets: readonly LetMove[],
): readonly string[] {
  const kept = (findVariant(tree, variant)?.body ?? []).filter(
    (statement) => statement.kind !== "override" || lets.every((move) => move.name !== statement.name.name),
  );
  return [
    ...lets.map((move) => `${move.name} = ${move.to}`),
    ...kept.map(({ range }) => text.slice(range.start, range.end)),
  ];
}

/** A name for the variant that the file does not have yet: `aimed`, `aimed 2`, … */
export function freeVariantName({ variants }: Pick<Source, "variants">, wanted = "aimed"): string {
  if (!variants.includes(wanted)) return wanted;
  let number = 2;
  while (variants.includes(`${wanted} ${number}`)) number += 1;
  return `${wanted} ${number}`;
}
