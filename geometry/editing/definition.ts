import type { Source } from "../analysis/source.ts";
import type { TextRange } from "../language/text.ts";
import { letUseAt, letUses } from "./let-uses.ts";

export interface Definition {
  /** The name at the cursor. */
  readonly origin: TextRange;
  /** The name in the let that declares it. */
  readonly name: TextRange;
  /** The whole let. */
  readonly statement: TextRange;
}

/** Where the name at an offset is declared; null where no let's name stands. Of two lets of one name the first counts. */
export function definitionAt(source: Source, offset: number): Definition | null {
  const use = letUseAt(letUses(source), offset);
  if (use === null) return null;
  for (const statement of source.tree.statements) {
    if (statement.kind === "let" && statement.name?.name === use.name) {
      return { origin: use.range, name: statement.name.range, statement: statement.range };
    }
  }
  return null;
}
