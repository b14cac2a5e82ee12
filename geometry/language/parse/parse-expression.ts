import type { BinaryExpression, Expression, UnaryExpression } from "../tree.ts";
import { FUNCTION_NAMES } from "../vocabulary.ts";
import { type Cursor, FARTHEST_LOOK } from "./cursor.ts";
import { fixOf, insertFix, insertion, replaceFix } from "./fixes.ts";
import { isUnitAt, parseUnitBehind } from "./parse-unit.ts";
import { FUNCTIONS, KEYWORDS, UNITS } from "./word-sets.ts";

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

/** Reports that a part is missing, with what belongs there: "a length such as 12 mm". */
export function failMissing(cursor: Cursor, expected: string): null {
  const found = cursor.missingRange();
  const instead = found.end > found.start ? `, but ${quote(cursor)} stands there` : "";
  return cursor.fail("missing-part", `Expected ${expected}${instead}.`, found);
}

function quote(cursor: Cursor): string {
  const text = cursor.text();
  return text.length > 40 ? `'${text.slice(0, 40)}…'` : `'${text}'`;
}

// Numbers ------------------------------------------------------------------------------------------------------------

function parseNumber(cursor: Cursor): Expression | null {
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

function numberOf(cursor: Cursor, text: string, range: { start: number; end: number }): number | null {
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
  if (!isLet && KEYWORDS.has(word)) {
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
  if (!isLet && KEYWORDS.has(word)) {
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

/** Takes the `)` that belongs to the parenthesis at `open`, skipping what stands before it. */
export function closeParenthesis(cursor: Cursor, open: number): void {
  if (cursor.takeSymbol(")") || cursor.panicking) {
    return;
  }
  const ahead = findClose(cursor);
  if (ahead === null) {
    reportOpen(cursor, open);
    return;
  }
  const range = { start: cursor.range().start, end: cursor.range(ahead - 1).end };
  cursor.guess("unexpected-text", "Expected an operator or ')' here.", range, cursor.removal(range));
  cursor.skipAhead(ahead + 1);
}

/** Where a keyword follows, the parenthesis was most likely forgotten before it, and reading goes on there. */
function reportOpen(cursor: Cursor, open: number): void {
  const message = "This parenthesis is not closed.";
  const range = { start: open, end: open + 1 };
  const fixes = [insertFix(cursor.previousEnd, ")")];
  if (cursor.at("word") && KEYWORDS.has(cursor.text())) {
    cursor.note("missing-brace", message, range, fixes);
  } else {
    cursor.fail("missing-brace", message, range, fixes);
  }
}

/** How many tokens ahead the closing parenthesis of this level stands on this line; null where there is none. */
function findClose(cursor: Cursor): number | null {
  let depth = 0;
  for (let ahead = 0; ahead < FARTHEST_LOOK; ahead += 1) {
    if (cursor.endsLine(ahead) || cursor.isSymbol("{", ahead)) {
      return null;
    }
    if (cursor.isSymbol(")", ahead)) {
      if (depth === 0) {
        return ahead;
      }
      depth -= 1;
    } else if (cursor.isSymbol("(", ahead)) {
      depth += 1;
    }
  }
  return null;
}
