import type { TextEdit } from "./text.ts";

/** Whether edits can be made in a text of so many characters: they lie in it, and none touches what another replaces. */
export function canApply(edits: readonly TextEdit[], length: number): boolean {
  const ordered = inOrder(edits);
  return ordered.every(
    ({ start, end }, i) => start <= end && end <= length && start >= (ordered[i - 1]?.end ?? 0),
  );
}

/**
 * The text with the edits made. Offsets are those of the text before any edit; the edits may come in any order, and
 * insertions at one place keep the order they are given in. Throws a RangeError for edits that overlap or lie outside
 * the text: that is a mistake of the program which made them.
 */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const ordered = inOrder(edits);
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

function inOrder(edits: readonly TextEdit[]): TextEdit[] {
  return [...edits].sort((a, b) => a.start - b.start || a.end - b.end);
}
