import type { Token } from "../token.ts";
import { tokenize } from "../tokenize.ts";
import { PLAIN_TEXTS } from "../typography.ts";

/** What an inch sign means. */
export const INCH = "in";

const PLAIN_TOKENS: ReadonlyMap<string, readonly Token[]> = new Map(
  PLAIN_TEXTS.map((plain) => [plain, tokenize(plain)]),
);

/** The tokens that a plain text of ours stands for: `^2` is two. */
export function plainTokens(plain: string): readonly Token[] {
  return PLAIN_TOKENS.get(plain) ?? [];
}

/** Every text that a token may mean though something else stands in the source. */
export const MEANING_TEXTS: readonly string[] = [
  ...new Set([INCH, ...[...PLAIN_TOKENS.values()].flatMap((tokens) => tokens.map((token) => token.text))]),
];
