import type { Cursor } from "./cursor.ts";
import { fixOf, insertFix, insertion } from "./fixes.ts";

export interface Block {
  readonly start: number;
  /** False where no `}` belongs to the `{`: the block then ends where something starts that cannot stand in it. */
  readonly isClosed: boolean;
  /** False for a block whose `{` is missing, which has been reported. */
  readonly hasBrace: boolean;
}

/**
 * Steps into the block behind a statement's head; its `{` may stand on the next line. What was wrong with the head does
 * not cost the block. Where the `{` is missing but the next line clearly belongs inside, by `isInside`, it is read as
 * if the brace were there. Null where there is no block, which has been reported.
 */
export function openBlock(
  cursor: Cursor,
  example: string,
  isInside: (ahead: number) => boolean,
): Block | null {
  if (cursor.panicking) {
    cursor.skipToBrace();
  }
  const end = cursor.previousEnd;
  if (cursor.kind() === "newline" && cursor.isSymbol("{", 1)) {
    cursor.calm();
    cursor.take();
  }
  if (cursor.isSymbol("{")) {
    return openAtBrace(cursor);
  }
  const message = `Expected a block: ${example}.`;
  cursor.fail("missing-brace", message, cursor.missingRange(), [insertFix(end, " {")]);
  return openWithoutBrace(cursor, isInside);
}

function openAtBrace(cursor: Cursor): Block {
  cursor.calm();
  let isClosed = cursor.table.closers.has(cursor.index);
  const { start } = cursor.take();
  if (!isClosed && cursor.isSymbol("{")) {
    // `{ {` with one `}`: the second brace is the mistake, not the missing end of the first.
    isClosed = cursor.table.closers.has(cursor.index);
    const range = cursor.range();
    cursor.note("unexpected-text", "One { opens the block.", range, cursor.removal(range));
    cursor.take();
  }
  return { start, isClosed, hasBrace: true };
}

function openWithoutBrace(cursor: Cursor, isInside: (ahead: number) => boolean): Block | null {
  const isOnNextLine = cursor.kind() === "newline";
  if (!isInside(isOnNextLine ? 1 : 0)) {
    return null;
  }
  cursor.calm();
  cursor.skipNewlines();
  return { start: cursor.range().start, isClosed: false, hasBrace: false };
}

/** True at a `}` and at the end of the text. */
export function isBlockOver(cursor: Cursor): boolean {
  return cursor.kind() === "end" || cursor.isSymbol("}");
}

/** Takes the `}`, or reports that there is none. */
export function closeBlock(cursor: Cursor, block: Block): void {
  if (cursor.isSymbol("}")) {
    cursor.take();
    return;
  }
  if (!block.hasBrace) {
    return;
  }
  const { source } = cursor.table;
  const end = cursor.previousEnd;
  const isOnOneLine = !/[\r\n]/.test(source.slice(block.start, end));
  const newText = isOnOneLine ? " }" : "\n}";
  const range = { start: block.start, end: block.start + 1 };
  cursor.note("missing-brace", "This block is not closed: its } is missing.", range, [
    fixOf("Insert '}'", [insertion(end, newText)]),
  ]);
}
