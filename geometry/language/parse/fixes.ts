import type { Fix } from "../problem.ts";
import type { TextEdit, TextRange } from "../text.ts";

export function replaceFix(range: TextRange, newText: string, safe = false): Fix {
  return fixOf(`Replace with '${newText}'`, [{ ...range, newText }], safe);
}

/** Inserts at `offset`; the title leaves out the blanks that go with it. */
export function insertFix(offset: number, newText: string, safe = false): Fix {
  return fixOf(`Insert '${newText.trim()}'`, [{ start: offset, end: offset, newText }], safe);
}

export function deleteFix(range: TextRange, what: string, safe = false): Fix {
  return fixOf(`Remove '${what}'`, [{ ...range, newText: "" }], safe);
}

export function fixOf(title: string, edits: readonly TextEdit[], safe = false): Fix {
  return { title, edits, safe };
}

/** An insertion as an edit, for fixes that make several. */
export function insertion(offset: number, newText: string): TextEdit {
  return { start: offset, end: offset, newText };
}
