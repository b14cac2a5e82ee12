import type { BlockStatement, Statement } from "../tree.ts";
import { BLOCK_WORDS, type BlockWord } from "../vocabulary.ts";
import type { BlockTable } from "./block-table.ts";
import { BUDGET } from "./budget.ts";
import { EVENT } from "./event.ts";
import { OPPONENT } from "./opponent.ts";
import { ROBOT } from "./robot.ts";

/** Every block of the language by its word. */
export const BLOCKS: Readonly<Record<BlockWord, BlockTable>> = {
  robot: ROBOT,
  opponent: OPPONENT,
  budget: BUDGET,
  event: EVENT,
};

export function isBlockWord(word: string): word is BlockWord {
  return BLOCK_WORDS.some((block) => block === word);
}

export function isBlock(statement: Statement): statement is BlockStatement {
  return isBlockWord(statement.kind);
}
