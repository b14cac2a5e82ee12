import type { TextEdit, TextRange } from "../text.ts";

/** How the text ends its lines. */
function lineBreak(text: string): string {
  return text.includes("\r\n") ? "\r\n" : "\n";
}

/** Inserts a line of its own below the line on which `range` ends. */
export function insertLineBelow(text: string, range: TextRange, line: string): TextEdit {
  const at = endOfLine(text, range.end);
  return { start: at, end: at, newText: `${lineBreak(text)}${line}` };
}

/** Deletes a statement: its lines with their comment, or only itself where it shares a line with other text. */
export function deleteLines(text: string, range: TextRange): TextEdit {
  const start = startOfLine(text, range.start);
  const end = endOfLine(text, range.end);
  const alone =
    text.slice(start, range.start).trim() === "" && /^\s*(#|$)/.test(text.slice(range.end, end).trim());
  if (!alone) return { start: range.start, end: range.end, newText: "" };
  return { start, end: text.startsWith("\r\n", end) ? end + 2 : Math.min(end + 1, text.length), newText: "" };
}

function startOfLine(text: string, offset: number): number {
  let start = offset;
  while (start > 0 && !isBreak(text.charAt(start - 1))) start -= 1;
  return start;
}

function endOfLine(text: string, offset: number): number {
  let end = offset;
  while (end < text.length && !isBreak(text.charAt(end))) end += 1;
  return end;
}

function isBreak(character: string): boolean {
  return character === "\n" || character === "\r";
}
