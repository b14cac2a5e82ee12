import type { BinaryExpression, Expression, UnaryExpression } from "../tree.ts";
import { FUNCTION_NAMES } from "../vocabulary.ts";
import type { Cursor } from "./cursor.ts";
import { failMissing } from "./fail-missing.ts";
import { fixOf, insertFix, insertion, replaceFix } from "./fixes.ts";
import { closeParenthesis } from "./parenthesis.ts";
import { parseNumber } from "./parse-number.ts";
import { isUnitAt, parseUnitBehind } from "./parse-unit.ts";
import { FUNCTIONS, UNITS } from "./word-sets.ts";

type Rule = (cursor: Cursor, expected: string) => Expression | null;

/**
 * Reads an expression. Null where there is none or it could not be read, which has been reported; `expected` says what
 * belongs here: "a length such as 12 mm".
 */
export function parseExpression(cursor: Cursor, expected: string): Expression | null {
  if (cursor.panicking) {
    return null;
  }
  cursor.startExpression();
  return parseSum(cursor, expected);
}

function parseSum(cursor: Cursor, expected: string): Expression | null {
  return parseLeftToRight(cursor, expected, ["+", "-"], parseProduct);
}

function parseProduct(cursor: Cursor, expected: string): Expression | null {
  return parseLeftToRight(cursor, expected, ["*", "/"], parseSigned);
}

function parseLeftToRight(
  cursor: Cursor,
  expected: string,
  operators: readonly ["+", "-"] | readonly ["*", "/"],
  operand: Rule,
): Expression | null {
  let left = operand(cursor, expected);
  for (;;) {
    const operator = operators.find((symbol) => cursor.atSymbol(symbol));
    if (operator === undefined || !cursor.countOperator()) {
      return left;
    }
    cursor.take();
    reportDoubledStar(cursor, operator);
    left = join(operator, left, operand(cursor, expected));
  }
}

/** `2**3`: the second star is left out, so that only one problem is found. */
function reportDoubledStar(cursor: Cursor, operator: string): void {
  if (operator === "*" && cursor.atSymbol("*")) {
    const range = { start: cursor.previousEnd - 1, end: cursor.range().end };
    cursor.note("unexpected-text", "A power is written ^, as in 2^3.", range, [replaceFix(range, "^")]);
    cursor.take();
  }
}

function join(
  operator: BinaryExpression["operator"],
  left: Expression | null,
  right: Expression | null,
): Expression | null {
  if (left === null || right === null) {
    return null;
  }
  return { kind: "binary", operator, left, right, range: { start: left.range.start, end: right.range.end } };
}

/** A sign binds weaker than a power: −2^2 is −4. */
function parseSigned(cursor: Cursor, expected: string): Expression | null {
  const operator = (["+", "-"] as const).find((symbol) => cursor.atSymbol(symbol));
  if (operator === undefined) {
    return parsePower(cursor, expected);
  }
  return cursor.nested(() => {
    const { start } = cursor.take();
    const operand = parseSigned(cursor, expected);
    return operand === null ? null : signed(operator, operand, start);
  });
}

function signed(operator: "+" | "-", operand: Expression, start: number): UnaryExpression {
  return { kind: "unary", operator, operand, range: { start, end: operand.range.end } };
}

/** Powers group to the right: 2^3^2 is 2^9. */
function parsePower(cursor: Cursor, expected: string): Expression | null {
  const base = parsePrimary(cursor, expected);
  if (!cursor.atSymbol("^")) {
    return base;
  }
  return cursor.nested(() => {
    cursor.take();
    return join("^", base, parseSigned(cursor, expected));
  });
}

function parsePrimary(cursor: Cursor, expected: string): Expression | null {
  if (cursor.at("number")) {
    return parseNumber(cursor);
  }
  if (cursor.at("word")) {
    return parseWord(cursor, expected);
  }
  if (cursor.atSymbol("(")) {
    return parseGroup(cursor, expected);
  }
  if (cursor.at("grade")) {
    const message = `${cursor.text()} is a balance grade; a grade stands only in a line such as require balance <= G40.`;
    return cursor.fail("unexpected-text", message, cursor.range());
  }
  return failMissing(cursor, expected);
}

// Words --------------------------------------------------------------------------------------------------------------

function parseWord(cursor: Cursor, expected: string): Expression | null {
  const word = cursor.text();
  const isLet = cursor.table.letNames.has(word);
  if (cursor.isSymbol("(", 1)) {
    return parseCallLike(cursor, expected, isLet);
  }
  if (!isLet && UNITS.has(word)) {
    return parseBareUnit(cursor);
  }
  if (!isLet && FUNCTIONS.has(word)) {
    const message = `The function ${word} needs its argument in parentheses: ${word}(…).`;
    return cursor.fail("missing-part", message, cursor.range());
  }
  if (!isLet && cursor.isKeyword(word)) {
    return failMissing(cursor, expected);
  }
  const range = cursor.take();
  return refuseUnit(cursor, { kind: "name", name: word, range }, "a let carries its unit itself");
}

/** `2 * mm`: read as one of the unit. */
function parseBareUnit(cursor: Cursor): Expression | null {
  const range = cursor.range();
  const message = `A number is missing before the unit ${cursor.text()}: a value such as 1 ${cursor.text()}.`;
  cursor.guess("missing-part", message, range, [insertFix(range.start, "1 ")]);
  const unit = parseUnitBehind(cursor, range.start);
  return unit === null || unit === "unknown" ? null : { kind: "number", value: 1, unit, range: unit.range };
}

/** Reports a unit behind what cannot take one, `reach mm`, and leaves it out. */
function refuseUnit(cursor: Cursor, value: Expression, why: string): Expression {
  if (cursor.panicking || !isUnitAt(cursor)) {
    return value;
  }
  const { start } = cursor.range();
  const message = `A unit stands only behind a number or parentheses; ${why}.`;
  const fix = fixOf(`Multiply by 1 ${cursor.text()}`, [insertion(start, "* 1 ")]);
  cursor.guess("unexpected-text", message, cursor.range(), [fix]);
  parseUnitBehind(cursor, value.range.start);
  return value;
}

/** A word and an opening parenthesis: a call, a misspelt call, or a missing operator. */
function parseCallLike(cursor: Cursor, expected: string, isLet: boolean): Expression | null {
  const word = cursor.text();
  if (FUNCTIONS.has(word)) {
    return parseCall(cursor, word, expected);
  }
  if (!isLet && cursor.isKeyword(word)) {
    return failMissing(cursor, expected);
  }
  if (isLet || UNITS.has(word)) {
    const { end } = cursor.take();
    const isSpaced = cursor.range().start > end;
    const message = `'${word}' is not a function; is an operator such as * missing before the parenthesis?`;
    return cursor.fail("unexpected-text", message, cursor.range(), [
      insertFix(cursor.range().start, isSpaced ? "* " : " * "),
    ]);
  }
  return parseUnknownCall(cursor, word, expected);
}

function parseUnknownCall(cursor: Cursor, word: string, expected: string): Expression | null {
  const meant = cursor.suggest(word, FUNCTION_NAMES);
  const hint = meant === null ? `functions are ${FUNCTION_NAMES.join(", ")}.` : `did you mean ${meant}?`;
  const fixes = meant === null ? [] : [replaceFix(cursor.range(), meant)];
  cursor.note("unknown-word", `'${word}' is not a function; ${hint}`, cursor.range(), fixes);
  const call = parseCall(cursor, meant ?? word, expected);
  return meant === null ? null : call;
}

function parseCall(cursor: Cursor, name: string, expected: string): Expression | null {
  return cursor.nested(() => {
    const callee = { name, range: cursor.take() };
    const open = cursor.take();
    cursor.listDepth += 1;
    const args = parseArguments(cursor, expected);
    cursor.listDepth -= 1;
    closeParenthesis(cursor, open.start);
    if (args === null) {
      return null;
    }
    const call: Expression = { kind: "call", callee, args, range: cursor.rangeFrom(callee.range.start) };
    return refuseUnit(cursor, call, "multiply by one of the unit, or put the call in parentheses");
  });
}

/** The arguments up to the closing parenthesis; null where one of them could not be read. */
function parseArguments(cursor: Cursor, expected: string): readonly Expression[] | null {
  const args: (Expression | null)[] = [];
  if (!cursor.atSymbol(")")) {
    do {
      args.push(parseSum(cursor, expected));
    } while (cursor.takeSymbol(","));
  }
  const read = args.filter((argument) => argument !== null);
  return read.length === args.length ? read : null;
}

// Parentheses --------------------------------------------------------------------------------------------------------

function parseGroup(cursor: Cursor, expected: string): Expression | null {
  return cursor.nested(() => {
    const { start } = cursor.take();
    const { listDepth } = cursor;
    cursor.listDepth = 0;
    const inner = parseSum(cursor, expected);
    cursor.listDepth = listDepth;
    closeParenthesis(cursor, start);
    const unit = parseUnitBehind(cursor, start);
    if (inner === null || unit === "unknown") {
      return null;
    }
    return { kind: "group", inner, unit, range: cursor.rangeFrom(start) };
  });
}
