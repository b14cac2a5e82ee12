import type { TextRange } from "../text.ts";
import type { PointExpression } from "../tree.ts";
import { type Cursor, FARTHEST_LOOK } from "./cursor.ts";
import { failMissing } from "./fail-missing.ts";
import { fixOf, insertFix, insertion } from "./fixes.ts";
import { closeParenthesis, findClose } from "./parenthesis.ts";
import { parseExpression } from "./parse-expression.ts";
import { isGluedComma } from "./parse-number.ts";
import { KEYWORDS } from "./word-sets.ts";

const POINT = "a point such as (10 mm, 0 mm)";
const LENGTH = "a length such as 12 mm";
const ANGLE = "an angle such as 45 deg";

/** Reads `(x, y)`, `(r @ angle)` or `by (dx, dy)`; null where there is none, which has been reported. */
export function parsePoint(cursor: Cursor): PointExpression | null {
  const { start } = cursor.range();
  const isRelative = cursor.takeWord("by");
  if (cursor.atSymbol("(")) {
    return parseParts(cursor, start, isRelative);
  }
  return isRelative ? failMissing(cursor, "an offset such as (10 mm, 0 mm)") : parseBarePoint(cursor);
}

function parseParts(cursor: Cursor, start: number, isRelative: boolean): PointExpression {
  const open = cursor.take();
  cursor.listDepth += 1;
  const firstIndex = cursor.index;
  const first = parseExpression(cursor, LENGTH);
  const isPolar = parseSeparator(cursor, isRelative);
  const second = parseExpression(cursor, isPolar ? ANGLE : LENGTH);
  cursor.listDepth -= 1;
  const isWhole = !cursor.atSymbol(",") || reportExtraPart(cursor, firstIndex);
  closeParenthesis(cursor, open.start);
  const kind = isRelative ? "relative" : isPolar ? "polar" : "cartesian";
  const range = cursor.rangeFrom(start);
  return isWhole ? { kind, first, second, range } : { kind, first: null, second: null, range };
}

/** Takes the comma or `@` between the parts; true for `@`. */
function parseSeparator(cursor: Cursor, isRelative: boolean): boolean {
  if (cursor.takeSymbol(",") || cursor.panicking) {
    return false;
  }
  if (cursor.atSymbol("@")) {
    if (isRelative) {
      const message = "Behind by stands a step in x and y: by (10 mm, 0 mm).";
      cursor.fail("unexpected-text", message, cursor.range());
      return false;
    }
    cursor.take();
    return true;
  }
  reportMissingSeparator(cursor);
  return false;
}

function reportMissingSeparator(cursor: Cursor): void {
  if (cursor.isLineEnd() || cursor.isSymbol(")")) {
    failMissing(cursor, "the second part of a point such as (10 mm, 0 mm) or (120 mm @ 45 deg)");
    return;
  }
  const message = "A comma is missing between the two parts of a point such as (10 mm, 0 mm).";
  const fixes = [insertFix(cursor.previousEnd, ",")];
  const isPart = cursor.kind() === "number" || cursor.kind() === "word" || cursor.isSymbol("(");
  if (isPart) {
    cursor.guess("missing-part", message, cursor.range(), fixes);
  } else {
    cursor.fail("missing-part", message, cursor.range(), fixes);
  }
}

/** A third part is a decimal comma or a mistake. Always false: the parts read are not what was meant. */
function reportExtraPart(cursor: Cursor, firstIndex: number): false {
  const commas: number[] = [];
  for (let ahead = firstIndex - cursor.index; ahead < FARTHEST_LOOK && !cursor.endsLine(ahead); ahead += 1) {
    if (cursor.isSymbol(")", ahead) && ahead >= 0) {
      break;
    }
    if (isGluedComma(cursor, ahead)) {
      commas.push(ahead);
    }
  }
  if (commas.length === 0) {
    cursor.note("unexpected-text", "A point has two parts: (10 mm, 0 mm).", cursor.range());
  } else {
    const edits = commas.map((ahead) => ({ ...cursor.range(ahead), newText: "." }));
    const first = commas[0] ?? 0;
    const range = { start: cursor.range(first - 1).start, end: cursor.range(first + 1).end };
    cursor.note("bad-number", "Decimals are written with a point: 1.5 mm.", range, [
      fixOf("Write decimals with a point", edits, true),
    ]);
  }
  // Up to the closing parenthesis; where there is none, that is the next problem.
  cursor.skipAhead(findClose(cursor) ?? 0);
  return false;
}

/** `10 mm, 0 mm` without its parentheses is read as the point it is meant to be. */
function parseBarePoint(cursor: Cursor): PointExpression | null {
  if (!startsBarePoint(cursor)) {
    return failMissing(cursor, POINT);
  }
  const { start } = cursor.range();
  const first = parseExpression(cursor, LENGTH);
  if (!cursor.takeSymbol(",")) {
    return cursor.panicking ? null : failMissingPoint(cursor, start);
  }
  const second = parseExpression(cursor, LENGTH);
  if (cursor.panicking) {
    return null;
  }
  const range = cursor.rangeFrom(start);
  reportBarePoint(cursor, range);
  return { kind: "cartesian", first, second, range };
}

function failMissingPoint(cursor: Cursor, start: number): null {
  return cursor.fail("missing-part", `Expected ${POINT}.`, cursor.rangeFrom(start));
}

function reportBarePoint(cursor: Cursor, range: TextRange): void {
  const open = insertion(range.start, "(");
  if (cursor.atSymbol(")")) {
    cursor.take();
    const message = "The opening parenthesis of this point is missing.";
    cursor.note("missing-brace", message, range, [fixOf("Insert '('", [open])]);
    return;
  }
  cursor.guess("missing-part", "A point stands in parentheses: (10 mm, 0 mm).", range, [
    fixOf("Put the point in parentheses", [open, insertion(range.end, ")")]),
  ]);
}

function startsBarePoint(cursor: Cursor): boolean {
  if (cursor.at("word")) {
    return !KEYWORDS.has(cursor.text()) || cursor.table.letNames.has(cursor.text());
  }
  return cursor.at("number") || cursor.atSymbol("-");
}
