import type { TextRange } from "../text.ts";
import type { Token } from "../token.ts";

/** A line as it stands in the file. */
export interface PhysicalLine extends TextRange {
  /** Without blanks, the comment and the line end. */
  readonly tokens: readonly Token[];
  readonly comment: Token | null;
  /** The text without the line end and without blanks at the end. */
  readonly source: string;
}

/** Splits the tokens of a text into its lines. */
export function readPhysicalLines(tokens: readonly Token[]): readonly PhysicalLine[] {
  const lines: PhysicalLine[] = [];
  let line: Token[] = [];
  let start = 0;
  for (const token of tokens) {
    if (token.kind === "newline") {
      lines.push(physicalLine(line, start));
      line = [];
      start = token.end;
    } else {
      line.push(token);
    }
  }
  lines.push(physicalLine(line, start));
  return lines;
}

function physicalLine(all: readonly Token[], start: number): PhysicalLine {
  const kept = all.at(-1)?.kind === "space" ? all.slice(0, -1) : all;
  return {
    start,
    end: all.at(-1)?.end ?? start,
    tokens: all.filter((token) => token.kind !== "space" && token.kind !== "comment"),
    comment: all.find((token) => token.kind === "comment") ?? null,
    source: kept.map((token) => token.text).join(""),
  };
}
