import type { Fix } from "../problem.ts";
import type { TextEdit, TextRange } from "../text.ts";

/** Text longer than this is not quoted in the title of a fix. */
const LONGEST_QUOTED = 40;

export function replaceFix(range: TextRange, newText: string, safe = false): Fix {
  return fixOf(`Replace with '${newText}'`, [{ ...range, newText }], safe);
}

/** Inserts at `offset`; the title leaves out the blanks that go with it. */
export function insertFix(offset: number, newText: string, safe = false): Fix {
  return fixOf(`Insert '${newText.trim()}'`, [{ start: offset, end: offset, newText }], safe);
}

/** Removes a range of `source`, and the blanks before it where more blanks or the line's end would follow them. */
export function deleteFix(source: string, range: TextRange, safe = false): Fix {
  const what = source.slice(range.start, range.end);
  const isShort = what.length <= LONGEST_QUOTED && /^[\p{L}\p{M}\p{N}\p{P}\p{S} ]+$/u.test(what);
  const isFollowedByBlank = /^[ \t\r\n]?$/.test(source.charAt(range.end));
  let { start } = range;
  while (isFollowedByBlank && /[ \t]/.test(source.charAt(start - 1))) {
    start -= 1;
  }
  return fixOf(isShort ? `Remove '${what}'` : "Remove this", [{ start, end: range.end, newText: "" }], safe);
}

export function fixOf(title: string, edits: readonly TextEdit[], safe = false): Fix {
  return { title, edits, safe };
}

/** An insertion as an edit, for fixes that make several. */
export function insertion(offset: number, newText: string): TextEdit {
  return { start: offset, end: offset, newText };
}
