import type { Cursor } from "./cursor.ts";
import { insertFix, replaceFix } from "./fixes.ts";
import { KEYWORDS } from "./word-sets.ts";

export interface WordChoice<W extends string> {
  /** The words that may stand here. */
  readonly words: readonly W[];
  /** What is missing where none of them does: "the direction of the spin: ccw or cw". */
  readonly expected: string;
  /** Other words for them, as a builder may write them. */
  readonly aliases?: Readonly<Record<string, W>>;
}

/** Takes one of several words, a misspelt one included; null where there is none, which has been reported. */
export function expectWord<W extends string>(cursor: Cursor, choice: WordChoice<W>): W | null {
  if (cursor.panicking) {
    return null;
  }
  const found = takeOneOf(cursor, choice.words) ?? takeMisspelt(cursor, choice.words, choice.aliases ?? {});
  if (found !== null) {
    return found;
  }
  const fixes = choice.words.map((word) => insertFix(cursor.previousEnd, ` ${word}`));
  const place = cursor.missingRange();
  const isNothingThere = place.start === place.end;
  return cursor.fail("missing-part", `Expected ${choice.expected}.`, place, isNothingThere ? fixes : []);
}

/** Takes the word if it stands here, perhaps misspelt; reports nothing where it does not. */
export function takeOption(cursor: Cursor, words: readonly string[]): string | null {
  if (cursor.panicking) {
    return null;
  }
  return takeOneOf(cursor, words) ?? takeMisspelt(cursor, words, {});
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
  const near = KEYWORDS.has(word) ? null : cursor.suggest(word, words);
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
