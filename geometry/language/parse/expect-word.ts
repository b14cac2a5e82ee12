import type { Cursor } from "./cursor.ts";
import { insertFix, replaceFix } from "./fixes.ts";

export interface WordChoice<W extends string> {
  /** The words that may stand here. */
  readonly words: readonly W[];
  /** What is missing where none of them does: "the direction of the spin: ccw or cw". */
  readonly expected: string;
  /** Other words for them, as a builder may write them. */
  readonly aliases?: Readonly<Record<string, W>>;
  /** Those that need nothing behind them, so that inserting one mends the line. */
  readonly whole?: readonly W[];
}

/** Takes one of several words, a misspelt one included; null where there is none, which has been reported. */
export function expectWord<W extends string>(cursor: Cursor, choice: WordChoice<W>): W | null {
  skipStrayParentheses(cursor);
  if (cursor.panicking) {
    return null;
  }
  const found = takeOneOf(cursor, choice.words) ?? takeMisspelt(cursor, choice.words, choice.aliases ?? {});
  if (found !== null) {
    return found;
  }
  const place = cursor.missingRange();
  const isNothingThere = place.start === place.end;
  const fixes = (choice.whole ?? []).map((word) => insertFix(cursor.previousEnd, ` ${word}`));
  return cursor.fail("missing-part", `Expected ${choice.expected}.`, place, isNothingThere ? fixes : []);
}

/**
 * Takes a word that stands before a value, such as `diameter`. Where it was left out but what follows it is there,
 * reading goes on as if it stood there. `isNext` says whether what follows is a word; else it is a value.
 */
export function expectWordBefore<W extends string>(
  cursor: Cursor,
  word: W,
  expected: string,
  aliases: Readonly<Record<string, W>> = {},
  isNext: () => boolean = () => startsValue(cursor),
): boolean {
  skipStrayParentheses(cursor);
  if (cursor.panicking) {
    return false;
  }
  const found = takeOneOf(cursor, [word]) ?? takeMisspelt(cursor, [word], aliases);
  if (found !== null) {
    return true;
  }
  const message = `Expected ${expected}.`;
  if (isNext()) {
    const place = cursor.range();
    cursor.guess("missing-part", message, place, [insertFix(place.start, `${word} `)]);
    return true;
  }
  cursor.fail("missing-part", message, cursor.missingRange());
  return false;
}

/** True where a value can start: a number, a parenthesis, a sign, or a word that is no keyword. */
function startsValue(cursor: Cursor): boolean {
  if (cursor.at("word")) {
    return !cursor.isKeyword(cursor.text());
  }
  return cursor.at("number") || cursor.atSymbol("(") || cursor.atSymbol("-");
}

/** Takes the word if it stands here, perhaps misspelt; reports nothing where it does not. */
export function takeOption(cursor: Cursor, words: readonly string[]): string | null {
  skipStrayParentheses(cursor);
  if (cursor.panicking) {
    return null;
  }
  return takeOneOf(cursor, words) ?? takeMisspelt(cursor, words, {});
}

/** Between the words of a statement no parenthesis is open. */
function skipStrayParentheses(cursor: Cursor): void {
  while (cursor.atSymbol(")")) {
    const range = cursor.range();
    const message = "This parenthesis closes nothing.";
    cursor.guess("unexpected-text", message, range, cursor.removal(range));
    cursor.take();
  }
}

function takeOneOf<W extends string>(cursor: Cursor, words: readonly W[]): W | null {
  const found = words.find((word) => cursor.atWord(word));
  if (found === undefined) {
    return null;
  }
  cursor.take();
  return found;
}

function takeMisspelt<W extends string>(
  cursor: Cursor,
  words: readonly W[],
  aliases: Readonly<Record<string, W>>,
): W | null {
  if (!cursor.at("word") || cursor.isSymbol("=", 1)) {
    return null;
  }
  const word = cursor.text();
  const alias = Object.hasOwn(aliases, word) ? aliases[word] : undefined;
  const near = cursor.isKeyword(word) ? null : cursor.suggest(word, words);
  const meant = alias ?? words.find((candidate) => candidate === near);
  if (meant === undefined) {
    return null;
  }
  const range = cursor.take();
  cursor.note("unknown-word", `'${word}' is not known here; did you mean ${meant}?`, range, [
    replaceFix(range, meant),
  ]);
  return meant;
}
