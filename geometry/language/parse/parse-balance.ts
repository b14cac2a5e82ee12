import type { TextRange } from "../text.ts";
import type { BalanceStatement, NameReference } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { expectWordBefore } from "./expect-word.ts";
import { failMissing } from "./fail-missing.ts";
import { fixOf, insertFix } from "./fixes.ts";
import { STATEMENTS } from "./word-sets.ts";

const COMMA = "Two names stand with a comma between them: balance by tail, lower.";

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
  const names = isBy ? parseNames(cursor) : [];
  return { kind: "balance", keyword, names, range: cursor.rangeFrom(keyword.start) };
}

function parseNames(cursor: Cursor): readonly NameReference[] {
  const names: NameReference[] = [];
  do {
    if (!cursor.at("word")) {
      failMissing(cursor, "the name of a let, such as tail");
      return names;
    }
    names.push({ kind: "name", name: cursor.text(), range: cursor.take() });
  } while (takeSeparator(cursor));
  return names;
}

function takeSeparator(cursor: Cursor): boolean {
  if (cursor.takeSymbol(",")) {
    return true;
  }
  if (!cursor.at("word") || STATEMENTS.has(cursor.text())) {
    return false;
  }
  const { start, end } = cursor.range();
  if (cursor.isWord("and") && cursor.kind(1) === "word") {
    const edit = { start: cursor.previousEnd, end, newText: "," };
    cursor.note("unexpected-text", COMMA, { start, end }, [fixOf("Replace with ','", [edit])]);
    cursor.take();
    return true;
  }
  cursor.note("missing-part", COMMA, { start, end }, [insertFix(cursor.previousEnd, ",")]);
  return true;
}
