import { BLOCKS } from "../../blocks/blocks.ts";
import type { BlockDesigns } from "../../design.ts";
import type { RequirableFigure } from "../../requirable.ts";
import type { SyntaxTree } from "../../tree.ts";
import type { BlockWord } from "../../vocabulary.ts";
import type { Scope } from "../values.ts";
import { settingOf } from "../variants.ts";
import { type BlockValues, blockValues } from "./block-values.ts";
import { budgetOf } from "./budget.ts";
import { eventOf } from "./event.ts";
import { opponentOf } from "./opponent.ts";
import { robotOf } from "./robot.ts";

/** What each block makes of its values. */
const DESIGNS: { readonly [W in BlockWord]: (values: BlockValues) => NonNullable<BlockDesigns[W]> } = {
  robot: robotOf,
  opponent: opponentOf,
  budget: budgetOf,
  event: eventOf,
};

/**
 * The blocks of a file; null for those that it has not. A variant changes them by the lets that they use.
 */
export function evaluateBlocks(
  scope: Scope,
  tree: SyntaxTree,
  figures: readonly RequirableFigure[],
): BlockDesigns {
  const values = (word: BlockWord): BlockValues | null =>
    settingOf(tree, null, word, (statement) => blockValues(scope, BLOCKS[word], statement, figures)).value;
  const designed = <W extends BlockWord>(word: W): BlockDesigns[W] | null => {
    const found = values(word);
    return found === null ? null : DESIGNS[word](found);
  };
  return {
    robot: designed("robot"),
    opponent: designed("opponent"),
    budget: designed("budget"),
    event: designed("event"),
  };
}
