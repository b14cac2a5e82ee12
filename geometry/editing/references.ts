import type { Source } from "../analysis/source.ts";
import type { TextRange } from "../language/text.ts";
import { letUseAt, letUses } from "./let-uses.ts";

export interface ReferenceOptions {
  /** Whether the declaration is one of the references. */
  readonly includeDeclaration: boolean;
}

/** Every place that names the let at an offset, overrides included, in text order; none where no let's name stands. */
export function referencesAt(
  source: Source,
  offset: number,
  { includeDeclaration }: ReferenceOptions,
): readonly TextRange[] {
  const uses = letUses(source);
  const name = letUseAt(uses, offset)?.name;
  return uses
    .filter((use) => use.name === name && (includeDeclaration || use.role !== "declaration"))
    .map(({ range }) => range);
}
