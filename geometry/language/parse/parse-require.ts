import type { TextRange } from "../text.ts";
import type { Expression, FigureLimit, GradeLiteral, Identifier, RequireStatement } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { failMissing } from "./fail-missing.ts";
import { replaceFix } from "./fixes.ts";
import { parseExpression } from "./parse-expression.ts";

type Relation = "<=" | ">=";

/** Reads what stands behind `require`. */
export function parseRequire(cursor: Cursor, keyword: TextRange): RequireStatement {
  const limit = parseFigureLimit(cursor, "what is required, such as mass <= 1.6 kg");
  return { ...limit, kind: "require", keyword, range: cursor.rangeFrom(keyword.start) };
}

/** Reads `FIGURE [at SPEED] <=|>= LIMIT`; `expected` is what is missing where nothing of it stands there. */
export function parseFigureLimit(cursor: Cursor, expected: string): FigureLimit {
  const { start } = cursor.range();
  const { figure, at } = parseFigure(cursor, expected);
  const relation = parseRelation(cursor);
  const limit = cursor.panicking ? null : parseLimit(cursor);
  return { figure, at, relation, limit, range: cursor.rangeFrom(start) };
}

/** Reads `FIGURE [at SPEED]`. */
export function parseFigure(cursor: Cursor, expected: string): Pick<FigureLimit, "figure" | "at"> {
  const figure = parseFigureName(cursor, expected);
  const at = cursor.takeWord("at") ? parseExpression(cursor, "a closing speed such as 3 m/s") : null;
  return { figure, at };
}

/** Words that lead on in an aim: where a figure is missing before one, it is not the figure. */
const IN_AN_AIM = ["and", "keeping", "by"];

function parseFigureName(cursor: Cursor, expected: string): Identifier | null {
  const isOfAnAim = IN_AN_AIM.some((word) => cursor.isWord(word));
  return cursor.at("word") && !isOfAnAim
    ? { name: cursor.text(), range: cursor.take() }
    : failMissing(cursor, expected);
}

function parseRelation(cursor: Cursor): Relation | null {
  for (const relation of ["<=", ">="] as const) {
    if (cursor.takeSymbol(relation)) {
      return relation;
    }
  }
  const meant = misspeltRelation(cursor);
  if (meant === null) {
    return failMissing(cursor, "<= or >= and a limit, such as <= 1.6 kg");
  }
  const { start } = cursor.take();
  const isDoubled = cursor.previousEnd === cursor.range().start;
  if (isDoubled && (cursor.atSymbol("<") || cursor.atSymbol(">") || cursor.atSymbol("="))) {
    cursor.take();
  }
  const range = cursor.rangeFrom(start);
  cursor.note("unexpected-text", `A limit is written ${meant}.`, range, [replaceFix(range, meant)]);
  return meant;
}

/** `<`, `>`, `=<` and `=>` for `<=` and `>=`. */
function misspeltRelation(cursor: Cursor): Relation | null {
  if (cursor.atSymbol("<") || (cursor.atSymbol("=") && cursor.isSymbol("<", 1))) {
    return "<=";
  }
  return cursor.atSymbol(">") || (cursor.atSymbol("=") && cursor.isSymbol(">", 1)) ? ">=" : null;
}

function parseLimit(cursor: Cursor): Expression | GradeLiteral | null {
  if (cursor.at("grade")) {
    const value = Number(cursor.text().slice(1));
    return { kind: "grade", value, range: cursor.take() };
  }
  return parseSmallGrade(cursor) ?? parseExpression(cursor, "a limit such as 1.6 kg or G40");
}

/** `g40`, `g6.3` and `G 40` are read as the grade they are meant to be, unless a let has that name. */
function parseSmallGrade(cursor: Cursor): GradeLiteral | null {
  const word = cursor.text();
  const isFree = cursor.at("word") && !cursor.table.letNames.has(word);
  const isSpaced = /^[gG]$/.test(word) && cursor.kind(1) === "number";
  if (!isFree || !(isSpaced || /^g\d+$/.test(word))) {
    return null;
  }
  const { start, end } = cursor.take();
  const isDecimal = cursor.at("number") && cursor.range().start === end && cursor.text().startsWith(".");
  const digits = word.slice(1) + (isSpaced || isDecimal ? cursor.text() : "");
  if (isSpaced || isDecimal) {
    cursor.take();
  }
  const range = cursor.rangeFrom(start);
  cursor.note("unknown-word", `A balance grade is written G${digits}.`, range, [
    replaceFix(range, `G${digits}`, true),
  ]);
  const value = Number(digits);
  return Number.isFinite(value) ? { kind: "grade", value, range } : null;
}
