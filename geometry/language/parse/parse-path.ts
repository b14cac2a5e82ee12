import type { Path, Step } from "../tree.ts";
import { STEP_WORDS } from "../vocabulary.ts";
import { type Block, closeBlock, isBlockOver, openBlock } from "./block.ts";
import type { Cursor } from "./cursor.ts";
import { insertFix, replaceFix } from "./fixes.ts";
import { isStepWord, parseStep, type StepWord } from "./parse-step.ts";
import { STATEMENTS, STEPS } from "./word-sets.ts";

/** Reads `{ from … line … close }`; null where there is no block, which has been reported. */
export function parsePath(cursor: Cursor): Path | null {
  const block = openBlock(cursor, "{ from (60 mm, 0 mm) line … close }", (ahead) => isStepAt(cursor, ahead));
  if (block === null) {
    return null;
  }
  const steps: Step[] = [];
  for (cursor.skipNewlines(); !isBlockOver(cursor); cursor.skipNewlines()) {
    if (!readItem(cursor, block, steps)) {
      break;
    }
  }
  closeBlock(cursor, block);
  return { steps, range: cursor.rangeFrom(block.start) };
}

/** Reads a step or reports what stands in its place; false where the block must have ended before. */
function readItem(cursor: Cursor, block: Block, steps: Step[]): boolean {
  if (cursor.kind() !== "word") {
    reportNoStep(cursor);
    return true;
  }
  const word = cursor.text();
  if (isStepWord(word) && !cursor.isSymbol("=", 1)) {
    readStep(cursor, word, steps);
    return true;
  }
  if (STATEMENTS.has(word) || cursor.isSymbol("=", 1)) {
    return reportStatement(cursor, block);
  }
  readMisspelt(cursor, word, steps);
  return true;
}

function readStep(cursor: Cursor, word: StepWord, steps: Step[]): void {
  cursor.calm();
  steps.push(parseStep(cursor, word, cursor.take()));
  if (cursor.panicking) {
    recoverToStep(cursor);
  }
}

/** Several steps may stand on one line, so a bad one costs no more than itself. */
function recoverToStep(cursor: Cursor): void {
  cursor.recover(() => isStepAt(cursor));
}

function isStepAt(cursor: Cursor, ahead = 0): boolean {
  return cursor.kind(ahead) === "word" && STEPS.has(cursor.text(ahead));
}

/** A statement that starts its line inside a block without `}` shows where the block should have ended. */
function reportStatement(cursor: Cursor, block: Block): boolean {
  if (!block.isClosed) {
    return false;
  }
  const word = cursor.text();
  const message = `'${word}' does not belong inside the braces of a path; here stand ${STEP_WORDS.join(", ")}.`;
  cursor.fail("misplaced-statement", message, cursor.range());
  cursor.take();
  recoverToStep(cursor);
  return true;
}

function readMisspelt(cursor: Cursor, word: string, steps: Step[]): void {
  const range = cursor.range();
  const meant = cursor.suggest(word, STEP_WORDS);
  if (meant === null || !isStepWord(meant)) {
    const message = `'${word}' is not a step; steps are ${STEP_WORDS.join(", ")}.`;
    cursor.fail("unknown-word", message, range);
    recoverToStep(cursor);
    return;
  }
  const message = `'${word}' is not a step; did you mean ${meant}?`;
  cursor.note("unknown-word", message, range, [replaceFix(range, meant)]);
  readStep(cursor, meant, steps);
}

function reportNoStep(cursor: Cursor): void {
  const range = cursor.range();
  if (cursor.isSymbol(",")) {
    cursor.note("unexpected-text", "Steps need no comma between them.", range, cursor.removal(range, true));
    cursor.take();
    return;
  }
  if (cursor.isSymbol("(")) {
    const message = "A step starts with its word: line (10 mm, 0 mm).";
    cursor.fail("missing-part", message, range, [insertFix(range.start, "line ")]);
  } else {
    const message = `Expected a step: ${STEP_WORDS.join(", ")}.`;
    cursor.fail("unexpected-text", message, cursor.restOfLine());
  }
  recoverToStep(cursor);
}
