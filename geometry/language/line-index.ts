import type { LineColumn } from "./text.ts";

/** Turns offsets into lines and columns and back. Lines end at LF, CRLF or CR, as in the editor. */
export interface LineIndex {
  readonly lineCount: number;
  /** Line and column, from 1, of an offset; offsets outside the text count as its start or end. */
  position(offset: number): LineColumn;
  /** The offset of a line and column, from 1; what lies outside the line counts as its start or end. */
  offset(line: number, column: number): number;
}

/** Reads the text once; each question then takes time in the logarithm of the number of lines. */
export function createLineIndex(text: string): LineIndex {
  const starts = lineStarts(text);
  return {
    lineCount: starts.length,
    position: (offset) => positionOf(starts, clamp(offset, 0, text.length)),
    offset: (line, column) => offsetOf(text, starts, line, column),
  };
}

function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    const isLineEnd = code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10);
    if (isLineEnd) {
      starts.push(i + 1);
    }
  }
  return starts;
}

function positionOf(starts: readonly number[], offset: number): LineColumn {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((starts[middle] ?? 0) <= offset) {
      low = middle;
    } else {
      high = middle - 1;
    }
  }
  return { line: low + 1, column: offset - (starts[low] ?? 0) + 1 };
}

function offsetOf(text: string, starts: readonly number[], line: number, column: number): number {
  if (line < 1) {
    return 0;
  }
  const start = starts[line - 1];
  if (start === undefined) {
    return text.length;
  }
  return clamp(start + column - 1, start, endOfLine(text, starts[line]));
}

/** The end of the line before the one that starts at `nextStart`, its line end left out. */
function endOfLine(text: string, nextStart: number | undefined): number {
  if (nextStart === undefined) {
    return text.length;
  }
  const isCrLf = text.charCodeAt(nextStart - 1) === 10 && text.charCodeAt(nextStart - 2) === 13;
  return nextStart - (isCrLf ? 2 : 1);
}

/** NaN counts as the least. */
function clamp(value: number, least: number, most: number): number {
  return value >= least ? Math.min(value, most) : least;
}
