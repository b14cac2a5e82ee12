import type { TextEdit } from "./text.ts";

/**
 * The text with the edits made. Offsets are those of the text before any edit; the edits may come in any order, and
 * insertions at one place keep the order they are given in. Throws a RangeError for edits that overlap or lie outside
 * the text: that is a mistake of the program which made them.
 */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const ordered = [...edits].sort((a, b) => a.start - b.start || a.end - b.end);
  const pieces: string[] = [];
  let done = 0;
  for (const edit of ordered) {
    if (edit.start < done || edit.end < edit.start || edit.end > text.length) {
      throw new RangeError(`edit ${edit.start}–${edit.end} overlaps another or lies outside the text`);
    }
    pieces.push(text.slice(done, edit.start), edit.newText);
    done = edit.end;
  }
  pieces.push(text.slice(done));
  return pieces.join("");
}
