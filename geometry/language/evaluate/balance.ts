import type { BalanceDesign } from "../design.ts";
import { nearestWord } from "../nearest-word.ts";
import type { BalanceStatement, NameReference } from "../tree.ts";
import type { LetStatements } from "./file-lets.ts";
import { didYouMean, failure, fix } from "./problems.ts";
import type { Scope } from "./values.ts";

/** The plane has two directions: more lets would leave it open which of them to move. */
const MOST_NAMES = 2;

/** What `balance by` names; null where that is no let, or none at all. */
export function evaluateBalance(
  scope: Scope,
  { names, range }: BalanceStatement,
  lets: LetStatements,
): BalanceDesign | null {
  const good = names.filter((name, index) => checkName(scope, names, index, name, lets));
  if (good.length === 0 || good.length < Math.min(names.length, MOST_NAMES)) return null;
  return { names: good.map(({ name }) => name), range };
}

function checkName(
  { report }: Scope,
  names: readonly NameReference[],
  index: number,
  { name, range }: NameReference,
  lets: LetStatements,
): boolean {
  if (!lets.has(name)) {
    const { hint, fixes } = didYouMean(range, nearestWord(name, lets.keys()));
    report(failure("undefined-name", range, `No let defines '${name}'${hint}`, fixes));
    return false;
  }
  const isRepeated = names.slice(0, index).some((before) => before.name === name);
  if (!isRepeated && index < MOST_NAMES) return true;
  const message = isRepeated
    ? `'${name}' stands here already.`
    : "A bar is balanced by one let or two; the first two count.";
  const start = names[index - 1]?.range.end ?? range.start;
  const remove = fix(`Remove '${name}'`, [{ start, end: range.end, newText: "" }]);
  report(failure(isRepeated ? "duplicate-name" : "out-of-range", range, message, [remove]));
  return false;
}
