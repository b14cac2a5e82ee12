import { number, presentMeasure } from "../../figures/present.ts";
import type { AimedBar, LimitStanding } from "./aiming.ts";

/** What the nearest bar that was found does not keep. */
export function missText({ lets, limits, problems }: AimedBar): string {
  const values = lets.map(({ name, to }) => `${name} = ${to}`).join(", ");
  const missed = limits.filter(({ holds }) => !holds);
  const [problem] = problems;
  if (missed.length > 0)
    return `No values within the bounds keep all limits. The nearest is ${values}: ${missed.map(limitMiss).join("; ")}.`;
  return `No values within the bounds keep all limits without a new problem. The nearest is ${values}${problem ? `: ${problem.message}` : "."}`;
}

function limitMiss({ label, measure, relation, limit, value, margin }: LimitStanding): string {
  const show = (amount: number) => {
    const { text, unit } = presentMeasure(measure, amount, "mm");
    return unit === "" ? text : `${text} ${unit}`;
  };
  if (value === null || margin === null) return `${label} is not known`;
  const side = relation === "<=" ? "over the limit of" : "under the least of";
  const share = limit === 0 ? "" : ` (${number((100 * Math.abs(margin)) / Math.abs(limit), 2)} %)`;
  return `${label} is ${show(value)}, ${side} ${show(limit)} by ${show(Math.abs(margin))}${share}`;
}
