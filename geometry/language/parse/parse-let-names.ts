import type { NameReference } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { failMissing } from "./fail-missing.ts";
import { fixOf, insertFix } from "./fixes.ts";
import { STATEMENTS } from "./word-sets.ts";

/** Reads `NAME[, NAME …]`, the lets that may be moved; `example` shows two of them in their statement. */
export function parseLetNames(cursor: Cursor, example: string): readonly NameReference[] {
  const names: NameReference[] = [];
  do {
    const name = parseLetName(cursor);
    if (name === null) {
      return names;
    }
    names.push(name);
  } while (takeNameSeparator(cursor, example));
  return names;
}

export function parseLetName(cursor: Cursor): NameReference | null {
  if (!cursor.at("word")) {
    return failMissing(cursor, "the name of a let, such as tail");
  }
  return { kind: "name", name: cursor.text(), range: cursor.take() };
}

/** Takes what stands between two names: a comma, or what was meant as one, which is reported. */
export function takeNameSeparator(cursor: Cursor, example: string): boolean {
  if (cursor.takeSymbol(",")) {
    return true;
  }
  if (!cursor.at("word") || STATEMENTS.has(cursor.text())) {
    return false;
  }
  const message = `Two names stand with a comma between them: ${example}.`;
  const { start, end } = cursor.range();
  if (cursor.isWord("and") && cursor.kind(1) === "word") {
    noteAnd(cursor, message);
    return true;
  }
  cursor.note("missing-part", message, { start, end }, [insertFix(cursor.previousEnd, ",")]);
  return true;
}

/** Takes an `and` that stands where a comma separates. */
export function noteAnd(cursor: Cursor, message: string): void {
  const { start, end } = cursor.range();
  const edit = { start: cursor.previousEnd, end, newText: "," };
  cursor.note("unexpected-text", message, { start, end }, [fixOf("Replace with ','", [edit])]);
  cursor.take();
}
