import { number } from "../figures/present.ts";
import type { Attempt } from "./attempt.ts";
import { type BalanceBy, type Task, told, type WhyNot } from "./balancing.ts";
import type { MovableLet } from "./movable-let.ts";
import type { Found } from "./solve-zero.ts";

/** Why a bar could not be balanced, and the nearest that was reached. */
export function failureOf({ before, needed, lets }: Task, best: Attempt | null): BalanceBy {
  const names = lets.map(({ name }) => name).join(" and ");
  const nearest = best?.balancing ?? null;
  const why = (reason: WhyNot, message: string): BalanceBy => ({
    solved: false,
    reason,
    message,
    before,
    nearest,
  });
  if (!best || !nearest || nearest.edits.length === 0)
    return why(
      best && isAtBound(best) ? "out-of-reach" : "no-effect",
      `No value of ${names} within the bounds balances the bar better: it stays at ${told(before)}, and ${needed.text} is needed.`,
    );
  const values = nearest.moves.map(({ name, to }) => `${name} = ${to}`).join(", ");
  const [problem] = best.problems;
  if (problem)
    return why(
      "new-problems",
      `${values} would bring the bar to ${told(nearest.after)}, but the file would have a problem that it has not: ${problem.message}`,
    );
  const reach = `${names} can bring the bar from ${told(before)} to ${told(nearest.after)} at ${values}`;
  return why(
    "out-of-reach",
    [`${reach}, but ${needed.text} is needed.`, ...boundsReached(lets, best)].join(" "),
  );
}

function isAtBound({ at }: Found): boolean {
  return at.some((value) => value === 0 || value === 1);
}

/** Which lets stand at a bound, in words. */
function boundsReached(lets: readonly MovableLet[], { at }: Found): readonly string[] {
  return lets.flatMap(({ name, isBounded, least, most, unit }, i) => {
    if (at[i] !== 0 && at[i] !== 1) return [];
    const bound = `${number(at[i] === 0 ? least : most, 6)}${unit === null ? "" : ` ${unit}`}`;
    return isBounded
      ? [`'${name}' is at its bound of ${bound}.`]
      : [`'${name}' has no bounds and was moved from half to twice its value, here ${bound}.`];
  });
}
