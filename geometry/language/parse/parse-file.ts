import { rowOf } from "../blocks/block-table.ts";
import { BLOCKS } from "../blocks/blocks.ts";
import type { Statement } from "../tree.ts";
import { BLOCK_WORDS, type BlockWord, STATEMENT_WORDS } from "../vocabulary.ts";
import type { Cursor } from "./cursor.ts";
import { fixOf, insertFix, replaceFix } from "./fixes.ts";
import { parseLet } from "./parse-let.ts";
import { isStatementWord, parseStatement, type StatementWord } from "./parse-statement.ts";
import { STEPS } from "./word-sets.ts";

/** Reads all statements of a file. */
export function parseFile(cursor: Cursor): readonly Statement[] {
  const statements: Statement[] = [];
  for (cursor.skipNewlines(); cursor.kind() !== "end"; cursor.skipNewlines()) {
    readItem(cursor, statements);
    finishLine(cursor);
  }
  return statements;
}

function readItem(cursor: Cursor, statements: Statement[]): void {
  if (cursor.isSymbol("}")) {
    reportStrayBrace(cursor);
  } else if (cursor.kind() !== "word") {
    const message = "Expected a statement, such as thickness 12 mm.";
    cursor.fail("unexpected-text", message, cursor.restOfLine());
  } else if (cursor.isSymbol("=", 1) && !isStatementWord(cursor.text())) {
    readBareLet(cursor, statements);
  } else {
    readWord(cursor, cursor.text(), statements);
  }
}

function readWord(cursor: Cursor, word: string, statements: Statement[]): void {
  if (isStatementWord(word)) {
    statements.push(parseStatement(cursor, word, cursor.take()));
  } else if (STEPS.has(word)) {
    skipSteps(cursor, word);
  } else if (blockOf(word) !== null) {
    const message = `'${word}' is a setting of a block: it stands in ${blockOf(word)} { … }.`;
    cursor.fail("misplaced-statement", message, cursor.range());
  } else {
    readMisspelt(cursor, word, statements);
  }
}

/** The first block that has a setting of that word; null where none has. */
function blockOf(word: string): BlockWord | null {
  return BLOCK_WORDS.find((block) => rowOf(BLOCKS[block], word) !== null) ?? null;
}

/** What stands behind a statement on its line: nothing, or another statement that belongs on its own line. */
function finishLine(cursor: Cursor): void {
  // A block whose `}` is missing ends where the next line starts.
  if (!cursor.panicking && !cursor.endsLine(0) && !cursor.startsLine) {
    if (isStatementAt(cursor)) {
      reportSecondStatement(cursor);
      return;
    }
    reportTrailing(cursor);
  }
  if (cursor.panicking) {
    cursor.recover();
  }
}

function isStatementAt(cursor: Cursor): boolean {
  return cursor.kind() === "word" && isStatementWord(cursor.text());
}

function reportSecondStatement(cursor: Cursor): void {
  const { start } = cursor.range();
  const edit = { start: cursor.previousEnd, end: start, newText: "\n" };
  const message = `'${cursor.text()}' starts a statement; a statement stands on its own line.`;
  cursor.note("unexpected-text", message, cursor.range(), [fixOf("Start a new line", [edit], true)]);
}

function reportTrailing(cursor: Cursor): void {
  const range = cursor.restOfLine();
  cursor.fail(
    "unexpected-text",
    "This does not belong here; the statement is complete before it.",
    range,
    cursor.removal(range),
  );
}

function reportStrayBrace(cursor: Cursor): void {
  const range = cursor.range();
  cursor.note("unexpected-text", "This } closes nothing.", range, cursor.removal(range));
  cursor.take();
}

/** `reach = 130 mm`: the word let is missing. */
function readBareLet(cursor: Cursor, statements: Statement[]): void {
  const range = cursor.range();
  const message = `A let starts with the word let: let ${cursor.text()} = ….`;
  cursor.note("missing-part", message, range, [insertFix(range.start, "let ")]);
  statements.push(parseLet(cursor, { start: range.start, end: range.start }));
}

/** Steps outside a block: those on the lines that follow, and the `}` behind them, are the same mistake. */
function skipSteps(cursor: Cursor, word: string): void {
  const message = `'${word}' is a step; steps stand in a block: outline { … } or cutout { … }.`;
  cursor.fail("misplaced-statement", message, cursor.range());
  do {
    cursor.recover();
    if (cursor.isSymbol("}")) {
      cursor.take();
      return;
    }
  } while (cursor.kind() === "newline" && takeLineOfStep(cursor));
}

/** Steps onto the next line if a step or the block's `}` stands there. */
function takeLineOfStep(cursor: Cursor): boolean {
  const isStep = cursor.kind(1) === "word" && STEPS.has(cursor.text(1)) && !cursor.isSymbol("=", 2);
  if (!isStep && !cursor.isSymbol("}", 1)) {
    return false;
  }
  cursor.take();
  return true;
}

function readMisspelt(cursor: Cursor, word: string, statements: Statement[]): void {
  const range = cursor.range();
  const meant = meantStatement(cursor, word);
  if (meant === null) {
    const message = `'${word}' is not a statement; statements are ${STATEMENT_WORDS.join(", ")}.`;
    cursor.fail("unknown-word", message, range);
    return;
  }
  const message = `'${word}' is not a statement; did you mean ${meant}?`;
  cursor.note("unknown-word", message, range, [replaceFix(range, meant)]);
  statements.push(parseStatement(cursor, meant, cursor.take()));
}

function meantStatement(cursor: Cursor, word: string): StatementWord | null {
  const meant = cursor.suggest(word, STATEMENT_WORDS);
  return meant !== null && isStatementWord(meant) ? meant : null;
}
