import type { TextRange } from "../text.ts";
import type { Expression, GradeLiteral, Identifier, RequireStatement } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { failMissing } from "./fail-missing.ts";
import { replaceFix } from "./fixes.ts";
import { parseExpression } from "./parse-expression.ts";

type Relation = "<=" | ">=";

/** Reads `FIGURE [at SPEED] <=|>= LIMIT`. */
export function parseRequire(cursor: Cursor, keyword: TextRange): RequireStatement {
  const figure = parseFigure(cursor);
  const at = cursor.takeWord("at") ? parseExpression(cursor, "a closing speed such as 3 m/s") : null;
  const relation = parseRelation(cursor);
  const limit = cursor.panicking ? null : parseLimit(cursor);
  return { kind: "require", keyword, figure, at, relation, limit, range: cursor.rangeFrom(keyword.start) };
}

function parseFigure(cursor: Cursor): Identifier | null {
  if (!cursor.at("word")) {
    return failMissing(cursor, "what is required, such as mass <= 1.6 kg");
  }
  return { name: cursor.text(), range: cursor.take() };
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
