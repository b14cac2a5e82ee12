import type { BalanceDesign } from "../design.ts";
import type { BalanceStatement } from "../tree.ts";
import type { LetStatements } from "./file-lets.ts";
import { movableNames } from "./movable-names.ts";
import type { Scope } from "./values.ts";

/** The plane has two directions: more lets would leave it open which of them to move. */
const MOST_NAMES = 2;

/** What `balance by` names; null where that is no let that can be moved, or none at all. */
export function evaluateBalance(
  scope: Scope,
  { names, range }: BalanceStatement,
  lets: LetStatements,
): BalanceDesign | null {
  const tooMany = "A bar is balanced by one let or two; the first two count.";
  const good = movableNames(scope, names, lets, { most: MOST_NAMES, tooMany });
  if (good.length === 0 || good.length < Math.min(names.length, MOST_NAMES)) return null;
  return { names: good, range };
}
