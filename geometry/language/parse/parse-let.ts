import type { Fix } from "../problem.ts";
import type { TextRange } from "../text.ts";
import type { Expression, Identifier, LetStatement, OverrideStatement } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { failMissing } from "./fail-missing.ts";
import { fixOf, insertFix } from "./fixes.ts";
import { parseExpression } from "./parse-expression.ts";
import { expectTo } from "./parse-setting.ts";
import { CONSTANTS, FUNCTIONS, UNITS } from "./word-sets.ts";

/** A name that stands in more places is left to the builder to rename. */
const MOST_RENAMED = 200;
const VALUE = "a value such as 12 mm";

/** Reads `name = value [from least to most]`; `keyword` is the range of `let`, or an empty one where it is missing. */
export function parseLet(cursor: Cursor, keyword: TextRange): LetStatement {
  const name = parseLetName(cursor);
  expectEquals(cursor);
  const value = parseExpression(cursor, VALUE);
  const bounds = cursor.takeWord("from") ? parseBounds(cursor) : null;
  return { kind: "let", keyword, name, value, bounds, range: cursor.rangeFrom(keyword.start) };
}

/** Reads `name = value` in a variant. */
export function parseOverride(cursor: Cursor): OverrideStatement {
  const keyword = cursor.range();
  const name = { name: cursor.text(), range: cursor.take() };
  expectEquals(cursor);
  const value = parseExpression(cursor, VALUE);
  return { kind: "override", keyword, name, value, range: cursor.rangeFrom(keyword.start) };
}

function parseLetName(cursor: Cursor): Identifier | null {
  if (cursor.at("grade")) {
    return parseGradeName(cursor);
  }
  if (!cursor.at("word")) {
    return failMissing(cursor, "a name that starts with a letter, such as reach");
  }
  const name = { name: cursor.text(), range: cursor.range() };
  reportReserved(cursor);
  cursor.take();
  return name;
}

/** `let G40 = …` could not be told from the grade where a limit is meant. */
function parseGradeName(cursor: Cursor): null {
  const message = `${cursor.text()} is a balance grade and cannot name a let.`;
  cursor.note("reserved-name", message, cursor.range());
  cursor.take();
  return null;
}

function reportReserved(cursor: Cursor): void {
  const word = cursor.text();
  const what = reservedAs(word);
  if (what !== null) {
    const message = `'${word}' is ${what} and cannot name a let.`;
    cursor.note("reserved-name", message, cursor.range(), renameFixes(cursor, word));
  }
}

function reservedAs(word: string): string | null {
  if (UNITS.has(word)) {
    return "a unit";
  }
  if (FUNCTIONS.has(word)) {
    return "a function";
  }
  return CONSTANTS.has(word) ? "a constant" : null;
}

function freeName(cursor: Cursor, word: string): string {
  let number = 1;
  while (cursor.table.letNames.has(`${word}_${number}`)) {
    number += 1;
  }
  return `${word}_${number}`;
}

/** Renames the let here and wherever the word stands as a value or an override, but not where it is a unit or a call. */
function renameFixes(cursor: Cursor, word: string): readonly Fix[] {
  const places = cursor.isFull ? null : cursor.placesOf(word, MOST_RENAMED);
  if (places === null) {
    return [];
  }
  const newText = freeName(cursor, word);
  const edits = places
    .filter((ahead) => isNameAt(cursor, ahead))
    .map((ahead) => ({ ...cursor.range(ahead), newText }));
  if (edits.length === 0) {
    return [];
  }
  return [fixOf(`Rename to '${newText}'`, edits)];
}

function isNameAt(cursor: Cursor, ahead: number): boolean {
  const isUnit = cursor.kind(ahead - 1) === "number" || cursor.isSymbol(")", ahead - 1);
  return !isUnit && !cursor.isSymbol("(", ahead + 1);
}

function expectEquals(cursor: Cursor): void {
  if (cursor.panicking || cursor.takeSymbol("=")) {
    return;
  }
  const { start } = cursor.range();
  if (cursor.at("word") && cursor.isSymbol("=", 1)) {
    skipSecondWord(cursor);
    return;
  }
  const message = "Expected = and a value, such as reach = 130 mm.";
  const isValueThere = cursor.at("number") || cursor.at("word") || cursor.isSymbol("(");
  if (isValueThere) {
    cursor.guess("missing-part", message, cursor.range(), [insertFix(start, "= ")]);
  } else {
    const hint = cursor.isLineEnd() ? "" : " A name is letters, digits and _.";
    cursor.fail("missing-part", `${message}${hint}`, cursor.missingRange());
  }
}

/** `let long tail = 3 mm`: the second word is left out. */
function skipSecondWord(cursor: Cursor): void {
  const range = cursor.range();
  const message = "A name is one word: letters, digits and _.";
  cursor.guess("unexpected-text", message, range, cursor.removal(range));
  cursor.take();
  cursor.take();
}

function parseBounds(cursor: Cursor): { from: Expression; to: Expression } | null {
  const from = parseExpression(cursor, "the least value, such as 80 mm");
  const to = expectTo(cursor, "to 120 mm")
    ? parseExpression(cursor, "the greatest value, such as 120 mm")
    : null;
  return from === null || to === null ? null : { from, to };
}
