import type { TextRange } from "../text.ts";
import type { NumberLiteral } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { fixOf, insertion, replaceFix } from "./fixes.ts";
import { isUnitAt, parseUnitBehind } from "./parse-unit.ts";

/** Reads a number with its unit; null where it cannot be computed with, which has been reported. */
export function parseNumber(cursor: Cursor): NumberLiteral | null {
  const { start } = cursor.range();
  const value = parseValue(cursor);
  const unit = parseUnitBehind(cursor, start);
  if (unit === null && cursor.at("number")) {
    return parseMixedFraction(cursor, start);
  }
  if (value === null || unit === "unknown") {
    return null;
  }
  return { kind: "number", value, unit, range: cursor.rangeFrom(start) };
}

function parseValue(cursor: Cursor): number | null {
  const text = cursor.text();
  const range = cursor.take();
  const isDecimalComma =
    cursor.listDepth === 0 && isGluedComma(cursor, 0) && !text.includes(".") && /^\d+$/.test(cursor.text(1));
  if (isDecimalComma) {
    const comma = cursor.take();
    const fraction = cursor.text();
    cursor.take();
    const fix = replaceFix(comma, ".", true);
    const message = `Decimals are written with a point: ${text}.${fraction}.`;
    cursor.note("bad-number", message, cursor.rangeFrom(range.start), [fix]);
    return Number(`${text}.${fraction}`);
  }
  return numberOf(cursor, text, range);
}

/** True where the token `ahead` is a comma between two numbers with no blank beside it: `1,5`. */
export function isGluedComma(cursor: Cursor, ahead: number): boolean {
  if (!cursor.isSymbol(",", ahead)) {
    return false;
  }
  const before = cursor.range(ahead - 1);
  const comma = cursor.range(ahead);
  const after = cursor.range(ahead + 1);
  const isBetween = cursor.kind(ahead - 1) === "number" && cursor.kind(ahead + 1) === "number";
  return isBetween && before.end === comma.start && comma.end === after.start;
}

function numberOf(cursor: Cursor, text: string, range: TextRange): number | null {
  const value = Number(text);
  const isUnderflow = value === 0 && /[1-9]/.test(text.replace(/[eE].*$/s, ""));
  if (Number.isFinite(value) && !isUnderflow) {
    return value;
  }
  if (Number.isNaN(value)) {
    const plain = text.replaceAll("_", "");
    const fixes = Number.isFinite(Number(plain)) ? [replaceFix(range, plain, true)] : [];
    cursor.note("bad-number", "This is not a number; numbers look like 12, 0.5 or 1.2e5.", range, fixes);
  } else {
    const size = isUnderflow ? "small" : "large";
    cursor.note("bad-number", `This number is too ${size} to compute with.`, range);
  }
  return null;
}

/** `1 1/4 in` where it can only mean one and a quarter; other numbers in a row are left to the caller. */
function parseMixedFraction(cursor: Cursor, start: number): null {
  const isFraction = cursor.isSymbol("/", 1) && cursor.kind(2) === "number" && isUnitAt(cursor, 3);
  if (!isFraction) {
    const message = "Two numbers in a row: is an operator such as + or * missing?";
    return cursor.fail("unexpected-text", message, cursor.range());
  }
  const edits = [
    insertion(start, "("),
    insertion(cursor.previousEnd, " +"),
    insertion(cursor.range(2).end, ")"),
  ];
  const range = { start, end: cursor.range(3).end };
  const whole = cursor.table.source.slice(start, cursor.previousEnd);
  const written = `(${whole} + ${cursor.text()}/${cursor.text(2)}) ${cursor.text(3)}`;
  cursor.note("unexpected-text", `A mixed fraction is written ${written}.`, range, [
    fixOf(`Replace with '${written}'`, edits, true),
  ]);
  cursor.take();
  cursor.take();
  cursor.take();
  parseUnitBehind(cursor, start);
  return null;
}
