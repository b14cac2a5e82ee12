/** Where the cursor stands: in which block, and behind which words of its statement, step or override. */
import { REQUIRABLE_FIGURES } from "../figures/catalogue.ts";
import { rowOf, wordsOf } from "../language/blocks/block-table.ts";
import { BLOCKS, isBlockWord } from "../language/blocks/blocks.ts";
import { isLineEnd } from "../language/characters.ts";
import { isSettingWord } from "../language/parse/parse-setting.ts";
import type { SyntaxKind } from "../language/parse/token-columns.ts";
import { readTokenTable, type TokenTable } from "../language/parse/token-table.ts";
import { STATEMENTS, STEPS } from "../language/parse/word-sets.ts";
import type { TextRange } from "../language/text.ts";
import { isClosedString, tokenize } from "../language/tokenize.ts";
import type { BlockWord } from "../language/vocabulary.ts";

export type BlockKind = "file" | "path" | "variant" | "unknown" | BlockWord;

export interface PlaceToken extends TextRange {
  readonly kind: SyntaxKind;
  readonly text: string;
}

export interface CursorPlace {
  readonly block: BlockKind;
  /** The tokens of the statement, step or override before the cursor; what is being typed is left out. */
  readonly item: readonly PlaceToken[];
  /** The words that begin the items before this one in the same block. */
  readonly wordsBefore: readonly string[];
  /** The word or number that the cursor stands in or right behind; empty, at the cursor, where there is none. */
  readonly typed: TextRange;
  readonly isInNumber: boolean;
  /** True where nothing but a new line, step or brace follows what is being typed, so that a whole item can go there. */
  readonly isFree: boolean;
  /** True where an opening parenthesis follows, as behind the name of a function. */
  readonly isCalled: boolean;
  readonly letNames: ReadonlySet<string>;
  /** The words that mean something in the block; empty where it is none with settings. */
  readonly blockWords: ReadonlySet<string>;
}

/** Null inside comments and strings, where nothing of the language stands. */
export function cursorPlace(text: string, offset: number): CursorPlace | null {
  if (isQuiet(text, offset)) return null;
  const table = readTokenTable(text);
  const typedIndex = indexOfTyped(table, offset);
  const isInNumber = typedIndex !== null && table.tokens.kind(typedIndex) === "number";
  const typed = typedIndex === null ? { start: offset, end: offset } : rangeOf(table, typedIndex);
  const end = typedIndex ?? countBefore(table, offset);
  const next = typedIndex === null ? end : end + 1;
  const { blocks, itemStart } = followBlocks(table, end);
  const innermost = blocks.at(-1);
  return {
    block: innermost?.kind ?? "file",
    item: tokensBetween(table, itemStart, end),
    wordsBefore: innermost?.words ?? [],
    typed,
    isInNumber,
    isFree: isFreeBehind(table, next),
    isCalled: table.tokens.kind(next) === "(",
    letNames: table.letNames,
    blockWords: innermost && isBlockWord(innermost.kind) ? wordsOf(BLOCKS[innermost.kind]) : new Set(),
  };
}

/** The nearest offset that lies in a text. */
export function clampOffset(text: string, offset: number): number {
  return Math.max(0, Math.min(text.length, offset));
}

/** True inside a comment or string; both end with their line, so only that has to be read. */
export function isQuiet(text: string, offset: number): boolean {
  const { start, end } = lineAround(text, offset);
  const tokens = tokenize(text.slice(start, end));
  for (const [index, token] of tokens.entries()) {
    const [from, to] = [start + token.start, start + token.end];
    if (from >= offset) return false;
    if (token.kind === "comment" || isSlashComment(token.text, tokens[index + 1]?.text)) return true;
    if (token.kind === "string" && (offset < to || (offset === to && !isClosedString(token.text))))
      return true;
  }
  return false;
}

/** `//` is reported and read as a comment. */
function isSlashComment(text: string, next: string | undefined): boolean {
  return text === "/" && next === "/";
}

/** The line of an offset, without its line end. */
function lineAround(text: string, offset: number): TextRange {
  let start = offset;
  while (start > 0 && !isLineEnd(text.charCodeAt(start - 1))) start -= 1;
  let end = offset;
  while (end < text.length && !isLineEnd(text.charCodeAt(end))) end += 1;
  return { start, end };
}

function rangeOf({ tokens }: TokenTable, index: number): TextRange {
  return { start: tokens.start(index), end: tokens.end(index) };
}

/** The word that the cursor stands in or right behind, or the number that it stands in the middle of. */
function indexOfTyped({ tokens }: TokenTable, offset: number): number | null {
  const index = firstIndex(tokens.count, (i) => tokens.end(i) >= offset);
  if (index === tokens.count || tokens.start(index) >= offset) return null;
  const kind = tokens.kind(index);
  if (kind === "word" || kind === "grade") return index;
  return kind === "number" && offset < tokens.end(index) ? index : null;
}

/** How many tokens start before an offset. */
function countBefore({ tokens }: TokenTable, offset: number): number {
  return firstIndex(tokens.count, (i) => tokens.start(i) >= offset);
}

/** The least index for which `holds`, which then holds for all that follow; `count` where there is none. */
function firstIndex(count: number, holds: (index: number) => boolean): number {
  let [low, high] = [0, count];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

interface OpenBlock {
  readonly kind: BlockKind;
  readonly isClosed: boolean;
  readonly words: string[];
}

/** Follows the braces up to a token: the blocks that are open there, and where its item starts. */
function followBlocks(table: TokenTable, end: number): { blocks: readonly OpenBlock[]; itemStart: number } {
  const { tokens } = table;
  const blocks: OpenBlock[] = [];
  let itemStart = 0;
  let depth = 0;
  let word = "";
  const startAnew = (index: number): void => {
    itemStart = index;
    depth = 0;
  };
  for (let index = 0; index < end; index += 1) {
    const kind = tokens.kind(index);
    if (kind === "newline") {
      startAnew(index + 1);
      if (endsOpenBlock(table, itemStart, blocks.at(-1))) blocks.pop();
    } else if (kind === "{" || kind === "}") {
      if (kind === "}") blocks.pop();
      else blocks.push({ kind: blockKind(word), isClosed: table.closers.has(index), words: [] });
      startAnew(index + 1);
      word = "";
    } else {
      depth += kind === "(" ? 1 : kind === ")" ? -1 : 0;
      if (depth === 0 && startsItem(table, index, itemStart, blocks.at(-1)?.kind)) itemStart = index;
      if (index === itemStart) {
        word = tokens.text(index);
        blocks.at(-1)?.words.push(word);
      }
    }
  }
  return { blocks, itemStart };
}

function blockKind(word: string): BlockKind {
  if (word === "variant" || isBlockWord(word)) return word;
  return word === "outline" || word === "cutout" ? "path" : "unknown";
}

/** A block whose `}` is missing ends before a line that starts with a statement, as it does for the parser. */
function endsOpenBlock({ tokens }: TokenTable, index: number, block: OpenBlock | undefined): boolean {
  if (block === undefined || block.isClosed || tokens.kind(index) !== "word") return false;
  return STATEMENTS.has(tokens.text(index)) && tokens.kind(index + 1) !== "=";
}

/** Several steps, and several overrides, may stand on one line. */
function startsItem(
  table: TokenTable,
  index: number,
  itemStart: number,
  block: BlockKind | undefined,
): boolean {
  const { tokens } = table;
  if (tokens.kind(index) !== "word" || block === undefined) return false;
  if (isBlockWord(block)) return startsBlockItem(table, index, itemStart, block);
  if (block === "path") return STEPS.has(tokens.text(index));
  if (block !== "variant") return false;
  const isOperand = OPERAND_FOLLOWS.has(tokens.kind(index - 1));
  return tokens.kind(index + 1) === "=" || (isSettingWord(tokens.text(index)) && !isOperand);
}

/** Behind a setting's word the name of a let is its value, whatever the name. */
function startsBlockItem(
  { tokens, letNames }: TokenTable,
  index: number,
  itemStart: number,
  block: BlockWord,
): boolean {
  const word = tokens.text(index);
  const isOperand = index > itemStart && OPERAND_FOLLOWS.has(tokens.kind(index - 1));
  const isValue = index === itemStart + 1 && letNames.has(word);
  if (isOperand || isValue) return false;
  return rowOf(BLOCKS[block], word) !== null || (BLOCKS[block].limitExample !== null && isFigure(word));
}

function isFigure(word: string): boolean {
  return REQUIRABLE_FIGURES.some(({ name }) => name === word);
}

const OPERAND_FOLLOWS: ReadonlySet<SyntaxKind> = new Set(["=", "+", "-", "*", "/", "^", "(", ",", "@"]);

function tokensBetween({ tokens }: TokenTable, start: number, end: number): readonly PlaceToken[] {
  return Array.from({ length: end - start }, (_, i) => ({
    kind: tokens.kind(start + i),
    text: tokens.text(start + i),
    start: tokens.start(start + i),
    end: tokens.end(start + i),
  }));
}

function isFreeBehind({ tokens }: TokenTable, index: number): boolean {
  const kind = tokens.kind(index);
  if (kind === "newline" || kind === "end" || kind === "}") return true;
  return kind === "word" && STEPS.has(tokens.text(index));
}
