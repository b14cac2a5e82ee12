import type { TextRange } from "./text.ts";

/**
 * What a token is. `space` is blanks, tabs and a byte-order mark, never a line end; `grade` is a balance grade such as
 * `G6.3`; `unknown` is whatever has no meaning in an outline file.
 */
export type TokenKind =
  | "space"
  | "newline"
  | "comment"
  | "word"
  | "number"
  | "grade"
  | "string"
  | "symbol"
  | "unknown";

/** A stretch of source text and what it is. The tokens of a text, joined, are the text again. */
export interface Token extends TextRange {
  readonly kind: TokenKind;
  readonly text: string;
}
