import type { Source } from "../analysis/source.ts";
import { isLineEnd } from "../language/characters.ts";
import { readTokenTable } from "../language/parse/token-table.ts";
import type { TextRange } from "../language/text.ts";
import { tokenize } from "../language/tokenize.ts";

/** What can be folded away: from the line of `start`, which stays, to the line of `end`. */
export interface FoldingRange {
  readonly range: TextRange;
  readonly kind: "block" | "comment";
}

/** Blocks that are longer than a line, their `}` left in sight, and runs of lines that hold comments alone. */
export function foldingRanges(source: Source): readonly FoldingRange[] {
  return [...blockRanges(source), ...commentRanges(source)].sort((a, b) => a.range.start - b.range.start);
}

function blockRanges({ tree: { text }, lines }: Source): readonly FoldingRange[] {
  const { tokens, closers } = readTokenTable(text);
  return [...closers].flatMap(([opener, closer]) => {
    const start = tokens.start(opener);
    const close = tokens.start(closer);
    const isAlone = text.slice(lines.offset(lines.position(close).line, 1), close).trim() === "";
    const end = isAlone ? endOfLineBefore(text, close) : close;
    return lines.position(start).line < lines.position(end).line
      ? [{ range: { start, end }, kind: "block" }]
      : [];
  });
}

function endOfLineBefore(text: string, offset: number): number {
  let end = offset;
  while (end > 0 && !isLineEnd(text.charCodeAt(end - 1))) end -= 1;
  return text.startsWith("\r\n", end - 2) ? end - 2 : Math.max(0, end - 1);
}

function commentRanges({ tree: { text } }: Source): readonly FoldingRange[] {
  const runs: { start: number; end: number; lines: number }[] = [];
  let run: (typeof runs)[number] | null = null;
  let isLineEmpty = true;
  for (const { kind, start, end } of tokenize(text)) {
    if (kind === "newline") {
      // A line without a comment ends the run.
      if (run !== null && run.end < start && isLineEmpty) run = null;
      isLineEmpty = true;
    } else if (kind === "comment" && isLineEmpty) {
      if (run === null) {
        run = { start, end, lines: 0 };
        runs.push(run);
      }
      run.end = end;
      run.lines += 1;
      isLineEmpty = false;
    } else if (kind !== "space") {
      run = null;
      isLineEmpty = false;
    }
  }
  return runs
    .filter(({ lines }) => lines > 1)
    .map(({ start, end }) => ({ range: { start, end }, kind: "comment" }));
}
