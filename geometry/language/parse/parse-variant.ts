import type { TextRange } from "../text.ts";
import type { Statement, VariantStatement } from "../tree.ts";
import { type Block, closeBlock, isBlockOver, openBlock } from "./block.ts";
import type { Cursor } from "./cursor.ts";
import { fixOf, replaceFix } from "./fixes.ts";
import { parseOverride } from "./parse-let.ts";
import { parseQuotedName } from "./parse-name.ts";
import { isSettingWord, parseSetting, SETTING_WORDS, type SettingWord } from "./parse-setting.ts";
import { STATEMENTS, STEPS } from "./word-sets.ts";

/** Reads `"name" { overrides }`. Several overrides may stand on one line. */
export function parseVariant(cursor: Cursor, keyword: TextRange): VariantStatement {
  const quoted = parseQuotedName(cursor, 'a name such as "long tail"');
  const block = openBlock(cursor, "{ tail = 110 mm }", (ahead) => isOverrideAt(cursor, ahead));
  const body = block === null ? [] : parseBody(cursor, block);
  return { kind: "variant", keyword, ...quoted, body, range: cursor.rangeFrom(keyword.start) };
}

function isOverrideAt(cursor: Cursor, ahead = 0): boolean {
  return cursor.kind(ahead) === "word" && cursor.isSymbol("=", ahead + 1);
}

function isItemAt(cursor: Cursor): boolean {
  return isOverrideAt(cursor) || (cursor.kind() === "word" && isSettingWord(cursor.text()));
}

function parseBody(cursor: Cursor, block: Block): readonly Statement[] {
  const body: Statement[] = [];
  for (cursor.skipNewlines(); !isBlockOver(cursor); cursor.skipNewlines()) {
    if (cursor.startsLine && endsOpenBlock(cursor, block)) {
      break;
    }
    readItem(cursor, body);
    if (cursor.panicking) {
      cursor.recover(() => isItemAt(cursor));
    }
  }
  closeBlock(cursor, block);
  return body;
}

/** A block without its `}` ends before the first line that starts with the word of a statement. */
function endsOpenBlock(cursor: Cursor, block: Block): boolean {
  const isStatement = cursor.kind() === "word" && STATEMENTS.has(cursor.text());
  return !block.isClosed && isStatement && !isOverrideAt(cursor);
}

function readItem(cursor: Cursor, body: Statement[]): void {
  cursor.calm();
  if (isOverrideAt(cursor) && !isSettingMeant(cursor)) {
    body.push(parseOverride(cursor));
  } else if (cursor.kind() === "word") {
    readWord(cursor, cursor.text(), body);
  } else {
    reportNoItem(cursor);
  }
}

/** `thickness = 10 mm` sets the thickness, unless a let of the file has that name. */
function isSettingMeant(cursor: Cursor): boolean {
  return isSettingWord(cursor.text()) && !cursor.table.letNames.has(cursor.text());
}

function readWord(cursor: Cursor, word: string, body: Statement[]): void {
  if (isSettingWord(word)) {
    body.push(parseSetting(cursor, word, cursor.take()));
  } else if (word === "let" && isOverrideAt(cursor, 1)) {
    readLet(cursor, body);
  } else if (STATEMENTS.has(word) || STEPS.has(word)) {
    const message = `'${word}' does not belong inside a variant; here stand overrides such as tail = 110 mm, and ${SETTING_WORDS.join(", ")}.`;
    failAt(cursor, "misplaced-statement", message);
  } else if (cursor.table.letNames.has(word)) {
    body.push(parseOverride(cursor));
  } else {
    readMisspelt(cursor, word, body);
  }
}

/** Reports at a word and steps over it, so that recovering does not stop where it starts. */
function failAt(cursor: Cursor, code: "misplaced-statement" | "unknown-word", message: string): void {
  cursor.fail(code, message, cursor.range());
  cursor.take();
}

function readLet(cursor: Cursor, body: Statement[]): void {
  const { start } = cursor.range();
  const range = { start, end: cursor.range(1).start };
  const message = "Inside a variant a let is overridden without the word let: tail = 110 mm.";
  cursor.note("misplaced-statement", message, cursor.range(), [
    fixOf("Remove 'let'", [{ ...range, newText: "" }], true),
  ]);
  cursor.take();
  body.push(parseOverride(cursor));
}

function readMisspelt(cursor: Cursor, word: string, body: Statement[]): void {
  const meant = cursor.suggest(word, SETTING_WORDS);
  if (meant === null || !isSettingWord(meant)) {
    failAt(
      cursor,
      "unknown-word",
      `'${word}' is neither a let of this file nor a setting such as thickness.`,
    );
    return;
  }
  const range = cursor.take();
  const message = `'${word}' is not a setting; did you mean ${meant}?`;
  cursor.note("unknown-word", message, range, [replaceFix(range, meant)]);
  body.push(parseSetting(cursor, meant satisfies SettingWord, range));
}

function reportNoItem(cursor: Cursor): void {
  const range = cursor.range();
  if (cursor.isSymbol(",")) {
    cursor.note(
      "unexpected-text",
      "Overrides need no comma between them.",
      range,
      cursor.removal(range, true),
    );
    cursor.take();
    return;
  }
  const message = "Expected an override such as tail = 110 mm.";
  cursor.fail("unexpected-text", message, cursor.restOfLine());
}
