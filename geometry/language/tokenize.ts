import { characterAt, isDigit, isLineEnd, isSpace, isWordStart, wordUnitsAt } from "./characters.ts";
import type { Token, TokenKind } from "./token.ts";
import { isTypographic } from "./typography.ts";

const SYMBOLS = "(){},@=+-*/^<>";
const LESS = 60;
const EQUALS = 61;
const GREATER = 62;
/** A grade ends where a word would: `G40x` is a word. */
const GRADE = /^G\d+(\.\d+)?$/;
/** Long enough for any grade; a longer run of digits behind a G is a word. */
const LONGEST_GRADE = 16;
const OPENING_QUOTES = '"\u201c\u201d\u201e';
/** Every quote closes a curly one, so that the search for it never runs over the same text twice. */
const CURLY_CLOSING_QUOTES = OPENING_QUOTES;

/**
 * Cuts any text into tokens without losing a character: joined, they are the text again. Linear in the text's length;
 * never throws.
 */
export function tokenize(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let start = 0;
  while (start < text.length) {
    const kind = tokenKindAt(text, start);
    const end = tokenEnd(text, start, kind);
    tokens.push({ kind, text: text.slice(start, end), start, end });
    start = end;
  }
  return tokens;
}

/** What kind of token starts at `offset`, which lies inside the text. */
export function tokenKindAt(text: string, offset: number): TokenKind {
  // Looked up where the character alone decides, which is nearly always: a long file has millions of tokens.
  return PLAIN_KINDS[text.charCodeAt(offset)] ?? readKindAt(text, offset);
}

function readKindAt(text: string, offset: number): TokenKind {
  const code = text.charCodeAt(offset);
  const character = text.charAt(offset);
  if (isLineEnd(code)) {
    return "newline";
  }
  if (isSpace(code)) {
    return "space";
  }
  if (isWordStart(text, offset)) {
    return gradeEnd(text, offset) > offset ? "grade" : "word";
  }
  if (isDigit(code) || (character === "." && isDigit(text.charCodeAt(offset + 1)))) {
    return "number";
  }
  if (SYMBOLS.includes(character)) {
    return "symbol";
  }
  if (character === "#") {
    return "comment";
  }
  return OPENING_QUOTES.includes(character) ? "string" : "unknown";
}

/** By code: the kind of the token that starts with an ASCII character, null where more than the character decides. */
const PLAIN_KINDS: readonly (TokenKind | null)[] = Array.from({ length: 128 }, (_, code) => {
  const character = String.fromCharCode(code);
  return character === "G" || character === "." ? null : readKindAt(character, 0);
});

/** Where the token of `kind` that starts at `start` ends; always behind `start`. */
export function tokenEnd(text: string, start: number, kind: TokenKind): number {
  switch (kind) {
    case "newline":
      return text.startsWith("\r\n", start) ? start + 2 : start + 1;
    case "space":
      return endOfSpace(text, start);
    case "comment":
      return endOfLine(text, start);
    case "word":
      return endOfWord(text, start);
    case "grade":
      return gradeEnd(text, start);
    case "number":
      return endOfNumber(text, start);
    case "string":
      return endOfString(text, start);
    case "symbol":
      return endOfSymbol(text, start);
    case "unknown":
      return endOfUnknown(text, start);
  }
}

/** The inside of a string token: the text between its quotes, or to its end where it is not closed. */
export function stringContent(text: string): string {
  return text.slice(1, isClosedString(text) ? -1 : undefined);
}

export function isClosedString(text: string): boolean {
  return text.length > 1 && closingQuotes(text.charAt(0)).includes(text.charAt(text.length - 1));
}

function endOfSpace(text: string, start: number): number {
  let end = start;
  while (end < text.length && isSpace(text.charCodeAt(end))) {
    end += 1;
  }
  return end;
}

function endOfLine(text: string, start: number): number {
  let end = start;
  while (end < text.length && !isLineEnd(text.charCodeAt(end))) {
    end += 1;
  }
  return end;
}

function endOfWord(text: string, start: number): number {
  let end = start;
  for (let units = wordUnitsAt(text, end); units > 0; units = wordUnitsAt(text, end)) {
    end += units;
  }
  return end;
}

/** Where the balance grade at `start` ends, or `start` where there is none. */
function gradeEnd(text: string, start: number): number {
  if (text.charAt(start) !== "G" || !isDigit(text.charCodeAt(start + 1))) {
    return start;
  }
  let end = skipDigits(text, start + 1);
  if (text.charAt(end) === "." && isDigit(text.charCodeAt(end + 1))) {
    end = skipDigits(text, end + 1);
  }
  const isWhole = end - start <= LONGEST_GRADE && wordUnitsAt(text, end) === 0;
  return isWhole && GRADE.test(text.slice(start, end)) ? end : start;
}

/**
 * Digits, points and underscores with at most one exponent. Too many points and underscores stay inside the token, so
 * that `1.2.3` and `1_000` are one bad number and not several good ones.
 */
function endOfNumber(text: string, start: number): number {
  const mantissaEnd = skipNumerals(text, start);
  if (!/^[eE]$/.test(text.charAt(mantissaEnd))) {
    return mantissaEnd;
  }
  const sign = text.charAt(mantissaEnd + 1);
  const digits = mantissaEnd + (sign === "+" || sign === "-" ? 2 : 1);
  return isDigit(text.charCodeAt(digits)) ? skipNumerals(text, digits) : mantissaEnd;
}

function skipDigits(text: string, start: number): number {
  let end = start;
  while (isDigit(text.charCodeAt(end))) {
    end += 1;
  }
  return end;
}

function skipNumerals(text: string, start: number): number {
  let end = start;
  while (isNumeralAt(text, end)) {
    end += 1;
  }
  return end;
}

function isNumeralAt(text: string, offset: number): boolean {
  const code = text.charCodeAt(offset);
  const character = text.charAt(offset);
  return isDigit(code) || character === "." || (character === "_" && isDigit(text.charCodeAt(offset + 1)));
}

function endOfString(text: string, start: number): number {
  const closing = closingQuotes(text.charAt(start));
  let end = start + 1;
  while (end < text.length && !isLineEnd(text.charCodeAt(end))) {
    if (closing.includes(text.charAt(end))) {
      return end + 1;
    }
    end += 1;
  }
  return end;
}

function closingQuotes(opening: string): string {
  return opening === '"' ? '"' : CURLY_CLOSING_QUOTES;
}

function endOfSymbol(text: string, start: number): number {
  const code = text.charCodeAt(start);
  const isRelation = code === LESS || code === GREATER;
  return isRelation && text.charCodeAt(start + 1) === EQUALS ? start + 2 : start + 1;
}

/** One typographic character, since each has its own replacement, or a run of others. */
function endOfUnknown(text: string, start: number): number {
  const first = characterAt(text, start);
  let end = start + first.length;
  if (isTypographic(first)) {
    return end;
  }
  while (end < text.length && tokenKindAt(text, end) === "unknown") {
    const next = characterAt(text, end);
    if (isTypographic(next)) {
      return end;
    }
    end += next.length;
  }
  return end;
}
