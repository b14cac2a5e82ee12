import type { TextRange } from "../text.ts";
import type { BalanceStatement } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { expectWordBefore } from "./expect-word.ts";
import { parseLetNames } from "./parse-let-names.ts";

/** Reads `by NAME[, NAME]`. How many names make sense is left to the evaluation. */
export function parseBalance(cursor: Cursor, keyword: TextRange): BalanceStatement {
  const isNext = () => cursor.at("word");
  const isBy = expectWordBefore(
    cursor,
    "by",
    "by and the names of one or two lets, such as by tail, lower",
    {},
    isNext,
  );
  const names = isBy ? parseLetNames(cursor, "balance by tail, lower") : [];
  return { kind: "balance", keyword, names, range: cursor.rangeFrom(keyword.start) };
}
