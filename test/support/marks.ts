import type { TextRange } from "../../geometry/language/text.ts";

export interface Marked {
  readonly text: string;
  readonly ranges: readonly TextRange[];
}

/** The text without ⟦ and ⟧, and the ranges between them in the order in which they start. */
export function readRanges(marked: string): Marked {
  const ranges: { start: number; end: number }[] = [];
  const open: { start: number; end: number }[] = [];
  let text = "";
  for (const character of marked) {
    if (character === "⟦") {
      const range = { start: text.length, end: text.length };
      ranges.push(range);
      open.push(range);
    } else if (character === "⟧") {
      const range = open.pop();
      if (range === undefined) throw new Error("⟧ without ⟦");
      range.end = text.length;
    } else {
      text += character;
    }
  }
  if (open.length > 0) throw new Error("⟦ without ⟧");
  return { text, ranges };
}

/** The text with marks around ranges that do not overlap. */
export function showRanges(text: string, ranges: readonly TextRange[]): string {
  return [...ranges]
    .sort((a, b) => b.start - a.start)
    .reduce(
      (shown, { start, end }) => `${shown.slice(0, start)}⟦${shown.slice(start, end)}⟧${shown.slice(end)}`,
      text,
    );
}
