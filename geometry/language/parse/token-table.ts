import type { Problem } from "../problem.ts";
import { joinLines } from "./join-lines.ts";
import { createProblemList } from "./problem-list.ts";
import { readTokens } from "./read-tokens.ts";
import type { TokenColumns } from "./token-columns.ts";

/** The tokens as the parser wants them: line ends only where a statement may end, and what was found in passing. */
export interface TokenTable {
  readonly source: string;
  readonly tokens: TokenColumns;
  /** From each `{` that is closed to its `}`. */
  readonly closers: ReadonlyMap<number, number>;
  /** The names that stand behind `let`. */
  readonly letNames: ReadonlySet<string>;
  readonly problems: readonly Problem[];
}

/** Reads a text into a token table. Linear; never throws. */
export function readTokenTable(source: string): TokenTable {
  const problems = createProblemList();
  const tokens = joinLines(readTokens(source, problems));
  return {
    source,
    tokens,
    closers: matchBraces(tokens),
    letNames: findLetNames(tokens),
    problems: problems.found,
  };
}

function matchBraces(tokens: TokenColumns): ReadonlyMap<number, number> {
  const closers = new Map<number, number>();
  const open: number[] = [];
  for (let i = 0; i < tokens.count; i += 1) {
    const kind = tokens.kind(i);
    if (kind === "{") {
      open.push(i);
    } else if (kind === "}") {
      const opener = open.pop();
      if (opener !== undefined) {
        closers.set(opener, i);
      }
    }
  }
  return closers;
}

function findLetNames(tokens: TokenColumns): ReadonlySet<string> {
  const names = new Set<string>();
  for (let i = 0; i < tokens.count; i += 1) {
    if (tokens.kind(i) === "word" && tokens.kind(i + 1) === "word" && tokens.isSpelt(i, "let")) {
      names.add(tokens.text(i + 1));
    }
  }
  return names;
}
