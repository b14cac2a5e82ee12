import { isBlockWord } from "../blocks/blocks.ts";
import type { TextRange } from "../text.ts";
import type { OutlineStatement, Statement, Symmetry } from "../tree.ts";
import { STATEMENT_WORDS } from "../vocabulary.ts";
import type { Cursor } from "./cursor.ts";
import { expectWord, takeOption, type WordChoice } from "./expect-word.ts";
import { parseAim } from "./parse-aim.ts";
import { parseBalance } from "./parse-balance.ts";
import { parseBlock } from "./parse-block.ts";
import { parseExpression } from "./parse-expression.ts";
import { parseHole, parseSlot } from "./parse-hole.ts";
import { parseLet } from "./parse-let.ts";
import { parseQuotedName } from "./parse-name.ts";
import { parsePath } from "./parse-path.ts";
import { parseRequire } from "./parse-require.ts";
import { parseSetting, skipEquals } from "./parse-setting.ts";
import { parseVariant } from "./parse-variant.ts";

export type StatementWord = (typeof STATEMENT_WORDS)[number];

const MIRROR_AXIS: WordChoice<"x" | "y"> = {
  words: ["x", "y"],
  expected: "the axis of the mirror: x or y",
  whole: ["x", "y"],
};

export function isStatementWord(word: string): word is StatementWord {
  return STATEMENT_WORDS.some((statement) => statement === word);
}

/** Reads a statement from behind its word, which stood at `keyword`. */
export function parseStatement(cursor: Cursor, word: StatementWord, keyword: TextRange): Statement {
  if (word !== "let") {
    skipEquals(cursor, word);
  }
  if (isBlockWord(word)) {
    return parseBlock(cursor, word, keyword);
  }
  switch (word) {
    case "bar": {
      const quoted = parseQuotedName(cursor, 'a name such as "Wattlebird one-tooth"');
      return { kind: "bar", keyword, ...quoted, range: cursor.rangeFrom(keyword.start) };
    }
    case "let":
      return parseLet(cursor, keyword);
    case "outline":
      return parseOutline(cursor, keyword);
    case "hole":
      return parseHole(cursor, keyword);
    case "slot":
      return parseSlot(cursor, keyword);
    case "cutout": {
      const path = parsePath(cursor);
      return { kind: "cutout", keyword, path, range: cursor.rangeFrom(keyword.start) };
    }
    case "require":
      return parseRequire(cursor, keyword);
    case "balance":
      return parseBalance(cursor, keyword);
    case "aim":
      return parseAim(cursor, keyword);
    case "variant":
      return parseVariant(cursor, keyword);
    default:
      return parseSetting(cursor, word, keyword);
  }
}

function parseOutline(cursor: Cursor, keyword: TextRange): OutlineStatement {
  const symmetry = parseSymmetry(cursor);
  const path = parsePath(cursor);
  return { kind: "outline", keyword, symmetry, path, range: cursor.rangeFrom(keyword.start) };
}

function parseSymmetry(cursor: Cursor): Symmetry | null {
  const { start } = cursor.range();
  const kind = takeOption(cursor, ["repeat", "mirror"]);
  if (kind === "repeat") {
    const count = parseExpression(cursor, "a count such as 2");
    return { kind, count, range: cursor.rangeFrom(start) };
  }
  if (kind === "mirror") {
    const axis = expectWord(cursor, MIRROR_AXIS);
    return { kind, axis, range: cursor.rangeFrom(start) };
  }
  return null;
}
