import { isBlock } from "../blocks/blocks.ts";
import type { FileReading } from "../parse/read-file.ts";
import type { TokenColumns } from "../parse/token-columns.ts";
import type { TextRange } from "../text.ts";

interface LinePlace {
  /** False where a problem was found in the statement or step, or its text was skipped. */
  readonly isUnderstood: boolean;
  /** True for a line that goes on inside the parentheses of the line before. */
  readonly isContinuation: boolean;
}

/** How the lines of a file stand to what was read from it. */
export interface Standing {
  of(physicalLine: TextRange): LinePlace;
  /** True where a token or comment stands inside the braces of a block, the braces left out. */
  isInBlock(place: TextRange): boolean;
}

/** One or more lines of the file that are one to the parser, from the first token to the line end. */
interface LogicalLine extends TextRange {
  readonly isUnderstood: boolean;
}

export function readStanding(reading: FileReading): Standing {
  const doubtful = mergeRanges([...reading.problems.map((problem) => problem.range), ...reading.skipped]);
  const logical = readLogicalLines(reading, doubtful);
  const blocks = readBlocks(reading);
  return {
    of: (line) => placeOf(line, logical[firstEndingAt(logical, line.start)], doubtful),
    isInBlock: ({ start }) => {
      const block = blocks[firstEndingAt(blocks, start + 1)];
      return block !== undefined && block.start < start && start < block.end;
    },
  };
}

/** `logical` is the line of the parser that holds the physical line, or that follows a line without tokens. */
function placeOf(
  line: TextRange,
  logical: LogicalLine | undefined,
  doubtful: readonly TextRange[],
): LinePlace {
  // A line may consist of nothing but characters that were left out, and so be none to the parser.
  const isDoubtful = (doubtful[firstEndingAt(doubtful, line.start)]?.start ?? Infinity) <= line.end;
  if (logical === undefined || line.end < logical.start) {
    return { isUnderstood: !isDoubtful, isContinuation: false };
  }
  return {
    isUnderstood: !isDoubtful && logical.isUnderstood,
    isContinuation: logical.start < line.start,
  };
}

/** Sorted ranges that do not touch, over the same places. */
function mergeRanges(ranges: readonly TextRange[]): readonly TextRange[] {
  const merged: TextRange[] = [];
  for (const range of [...ranges].sort((a, b) => a.start - b.start)) {
    const last = merged.at(-1);
    if (last !== undefined && range.start <= last.end) {
      merged[merged.length - 1] = { start: last.start, end: Math.max(last.end, range.end) };
    } else {
      merged.push(range);
    }
  }
  return merged;
}

/** The index of the first range, in sorted ranges that do not overlap, that ends at `offset` or behind it. */
function firstEndingAt(ranges: readonly TextRange[], offset: number): number {
  let low = 0;
  let high = ranges.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if ((ranges[middle]?.end ?? 0) < offset) {
      low = middle + 1;
    } else {
      high = middle;
    }
  }
  return low;
}

function readLogicalLines({ table }: FileReading, doubtful: readonly TextRange[]): readonly LogicalLine[] {
  return splitAtLineEnds(table.tokens).map((range) => {
    const isDoubtful = (doubtful[firstEndingAt(doubtful, range.start)]?.start ?? Infinity) <= range.end;
    return { ...range, isUnderstood: !isDoubtful };
  });
}

function splitAtLineEnds(tokens: TokenColumns): readonly TextRange[] {
  const ranges: TextRange[] = [];
  let first: number | null = null;
  for (let i = 0; i < tokens.count; i += 1) {
    const start = tokens.start(i);
    const isEnd = tokens.kind(i) === "newline" || tokens.kind(i) === "end";
    if (isEnd && first !== null) {
      ranges.push({ start: first, end: start });
      first = null;
    } else if (!isEnd) {
      first ??= start;
    }
  }
  return ranges;
}

/** From `{` to `}` of each block, in the order of the text; they do not nest. */
function readBlocks({ tree, table }: FileReading): readonly TextRange[] {
  const { tokens, closers } = table;
  const openerOf = new Map(Array.from(closers, ([open, close]) => [tokens.start(close), tokens.start(open)]));
  return tree.statements.flatMap((statement) => {
    if (isBlock(statement)) {
      const end = blockEnd(statement.range, table.source);
      return [{ start: openerOf.get(end) ?? statement.keyword.end, end }];
    }
    switch (statement.kind) {
      case "outline":
      case "cutout":
        return statement.path === null ? [] : [pathBlock(statement.path.range, table.source)];
      case "variant": {
        const end = blockEnd(statement.range, table.source);
        return [{ start: openerOf.get(end) ?? statement.nameRange.end, end }];
      }
      default:
        return [];
    }
  });
}

/** Where the `{` is missing, the path starts with its first step, and that step is inside. */
function pathBlock(range: TextRange, source: string): TextRange {
  const hasBrace = source.charAt(range.start) === "{";
  return { start: hasBrace ? range.start : range.start - 1, end: blockEnd(range, source) };
}

/** Where the `}` stands, or the end of a block without one. */
function blockEnd(range: TextRange, source: string): number {
  return source.charAt(range.end - 1) === "}" ? range.end - 1 : range.end;
}
