/** Classes of characters, by UTF-16 code unit where that is enough and by code point where letters are concerned. */
import { isTypographic } from "./typography.ts";

const LETTER = /^\p{L}$/u;
const LETTER_MARK_OR_DIGIT = /^[\p{L}\p{M}\p{Nd}]$/u;
/** Blanks that editors and word processors leave in a text; they separate words as a plain blank does. */
const WIDE_SPACE = /^[\s\u0085\ufeff]$/;

const FIRST_NON_ASCII = 128;
const UNDERSCORE = 95;

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

export function isLineEnd(code: number): boolean {
  return code === 10 || code === 13;
}

function isAsciiLetter(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
}

/** True for a blank that is no line end. The line and paragraph separators of Unicode count as blanks. */
export function isSpace(code: number): boolean {
  if (code < FIRST_NON_ASCII) {
    return code === 32 || code === 9 || code === 11 || code === 12;
  }
  return WIDE_SPACE.test(String.fromCharCode(code));
}

/** True where a word starts: a letter of any script, or `_`. */
export function isWordStart(text: string, offset: number): boolean {
  const code = text.charCodeAt(offset);
  if (code < FIRST_NON_ASCII) {
    return isAsciiLetter(code) || code === UNDERSCORE;
  }
  return LETTER.test(characterAt(text, offset)) && !isTypographic(characterAt(text, offset));
}

/** How many UTF-16 units of a word stand at `offset`: 0 where the word has ended, 2 for a letter outside the base plane. */
export function wordUnitsAt(text: string, offset: number): number {
  const code = text.charCodeAt(offset);
  if (code < FIRST_NON_ASCII) {
    return isAsciiLetter(code) || isDigit(code) || code === UNDERSCORE ? 1 : 0;
  }
  const character = characterAt(text, offset);
  return LETTER_MARK_OR_DIGIT.test(character) && !isTypographic(character) ? character.length : 0;
}

/** The whole character at `offset`, both halves of a surrogate pair together; empty at the end of the text. */
export function characterAt(text: string, offset: number): string {
  const codePoint = text.codePointAt(offset);
  return codePoint === undefined ? "" : String.fromCodePoint(codePoint);
}
