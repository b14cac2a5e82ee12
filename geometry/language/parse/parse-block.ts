import { type BlockTable, rowOf, wordsOf } from "../blocks/block-table.ts";
import { BLOCKS } from "../blocks/blocks.ts";
import type { TextRange } from "../text.ts";
import type { BlockItem, BlockStatement } from "../tree.ts";
import type { BlockWord } from "../vocabulary.ts";
import { type Block, closeBlock, isBlockOver, openBlock } from "./block.ts";
import type { Cursor } from "./cursor.ts";
import { replaceFix } from "./fixes.ts";
import { parseBlockSetting } from "./parse-block-setting.ts";
import { parseFigureLimit } from "./parse-require.ts";
import { STATEMENTS, STEPS } from "./word-sets.ts";

/** A block as it is read: its word, its table and what messages list. */
interface Reading {
  readonly cursor: Cursor;
  readonly word: BlockWord;
  readonly table: BlockTable;
  readonly body: BlockItem[];
}

/** Reads `{ settings }` by the table of the block. Several settings may stand on one line. */
export function parseBlock(cursor: Cursor, word: BlockWord, keyword: TextRange): BlockStatement {
  const table = BLOCKS[word];
  const example = table.example.slice(word.length + 1);
  const isInside = (ahead: number) => cursor.kind(ahead) === "word" && isItemAt(cursor, table, ahead);
  const block = openBlock(cursor, example, isInside);
  const reading = { cursor, word, table, body: [] };
  if (block !== null) {
    cursor.blockWords = wordsOf(table);
    parseBody(reading, block);
    cursor.blockWords = new Set();
  }
  return { kind: word, keyword, body: reading.body, range: cursor.rangeFrom(keyword.start) };
}

function parseBody(reading: Reading, block: Block): void {
  const { cursor, table } = reading;
  for (cursor.skipNewlines(); !isBlockOver(cursor); cursor.skipNewlines()) {
    if (cursor.startsLine && endsOpenBlock(reading, block)) {
      break;
    }
    readItem(reading);
    if (cursor.panicking || cursor.guessing) {
      cursor.recover(() => cursor.kind() === "word" && isItemAt(cursor, table));
    }
  }
  closeBlock(cursor, block);
}

function isItemAt(cursor: Cursor, table: BlockTable, ahead = 0): boolean {
  return rowOf(table, cursor.text(ahead)) !== null || isLimitAt(cursor, table, ahead);
}

/** What makes a word the figure of a limit is the sign behind it: the parser knows no figures. */
function isLimitAt(cursor: Cursor, { limitExample }: BlockTable, ahead = 0): boolean {
  if (limitExample === null || cursor.kind(ahead) !== "word") {
    return false;
  }
  const isSign = (["<=", ">=", "<", ">"] as const).some((sign) => cursor.isSymbol(sign, ahead + 1));
  const isTurnedSign =
    cursor.isSymbol("=", ahead + 1) && (cursor.isSymbol("<", ahead + 2) || cursor.isSymbol(">", ahead + 2));
  return isSign || isTurnedSign || cursor.isWord("at", ahead + 1);
}

/** A block without its `}` ends before the first line that starts with the word of a statement. */
function endsOpenBlock({ cursor, table }: Reading, block: Block): boolean {
  const isStatement = cursor.kind() === "word" && STATEMENTS.has(cursor.text());
  return !block.isClosed && isStatement && !isItemAt(cursor, table);
}

function readItem(reading: Reading): void {
  const { cursor, word: block, table, body } = reading;
  cursor.calm();
  if (cursor.kind() !== "word") {
    reportNoItem(reading);
    return;
  }
  const word = cursor.text();
  const row = rowOf(table, word);
  if (row !== null) {
    body.push(parseBlockSetting(cursor, row, cursor.take()));
  } else if (isLimitAt(cursor, table)) {
    readLimit(reading);
  } else if (STATEMENTS.has(word) || STEPS.has(word)) {
    const message = `'${word}' does not belong inside the braces of ${block}; here ${standing(table)}.`;
    cursor.fail("misplaced-statement", message, cursor.range());
    cursor.take();
  } else {
    readMisspelt(reading, word);
  }
}

function readLimit({ cursor, table, body }: Reading): void {
  const limit = parseFigureLimit(cursor, `a limit such as ${table.limitExample}`);
  body.push({ ...limit, kind: "limit" });
}

function readMisspelt(reading: Reading, word: string): void {
  const { cursor, word: block, table, body } = reading;
  const meant = cursor.suggest(
    word,
    table.settings.map((row) => row.word),
  );
  const row = meant === null ? null : rowOf(table, meant);
  const range = cursor.range();
  if (row !== null) {
    const message = `'${word}' is not a setting of ${block}; did you mean ${row.word}?`;
    cursor.note("unknown-word", message, range, [replaceFix(range, row.word)]);
    body.push(parseBlockSetting(cursor, row, cursor.take()));
  } else if (table.limitExample !== null && !cursor.isFull) {
    // A figure whose sign is missing.
    readLimit(reading);
  } else {
    cursor.fail("unknown-word", `'${word}' is not a setting of ${block}; here ${standing(table)}.`, range);
    cursor.take();
  }
}

/** "stand limit, part, scale", for messages. */
function standing({ settings, limitExample }: BlockTable): string {
  const words = settings.map((row) => row.word).join(", ");
  return limitExample === null ? `stand ${words}` : `stand limits such as ${limitExample}, and ${words}`;
}

function reportNoItem({ cursor, table }: Reading): void {
  const range = cursor.range();
  if (cursor.isSymbol(",")) {
    cursor.note(
      "unexpected-text",
      "Settings need no comma between them.",
      range,
      cursor.removal(range, true),
    );
    cursor.take();
    return;
  }
  const example = table.settings[0]?.example ?? table.limitExample ?? "";
  cursor.fail("unexpected-text", `Expected a setting such as ${example}.`, cursor.restOfLine());
}
