import { requirementLabel, standingOf } from "../../analysis/judge.ts";
import type { Assessment } from "../../figures/assessment.ts";
import type { Measure } from "../../figures/figure.ts";
import type { Requirement } from "../../language/design.ts";
import { statedLimits } from "../../language/stated-limits.ts";
import { differenceOf } from "./difference.ts";
import { type Verdict, verdictOn } from "./verdict.ts";

/** How one bar stands to a requirement; numbers in the unit of the row's key. */
export interface RequirementCell {
  /** Whether the bar's own file states it; else it is held to the limit of the first that does. */
  readonly own: boolean;
  readonly limit: number;
  readonly value: number | null;
  /** Positive while it holds. */
  readonly margin: number | null;
  readonly holds: boolean | null;
  readonly verdict: Verdict | null;
}

/** One requirement on every bar. */
export interface RequirementRow {
  /** The word in the file, such as `tip_speed`. */
  readonly figure: string;
  /** Of the figure that it limits, its unit in the name; `maxMm` for a bite. */
  readonly key: string;
  readonly label: string;
  readonly measure: Measure;
  readonly relation: "<=" | ">=";
  /** The closing speed of `bite at …`. */
  readonly atMPerS: number | null;
  /** Whether an event states it. */
  readonly ofEvent: boolean;
  readonly cells: readonly RequirementCell[];
}

/**
 * The requirements of all files, those of the reference first, each held to every bar. A file that does not state one
 * is judged by the first that does: a bar that is to replace another has to live up to what that one must.
 */
export function compareRequirements(bars: readonly Assessment[]): RequirementRow[] {
  const stated = bars.map(({ design }) => keyed(statedLimits(design)));
  const keys = new Set(stated.flatMap((requirements) => [...requirements.keys()]));
  return [...keys].flatMap((key) => {
    const first = stated.find((requirements) => requirements.has(key))?.get(key);
    return first
      ? (rowOf(
          first,
          stated.map((requirements) => requirements.get(key)),
          bars,
        ) ?? [])
      : [];
  });
}

/** What tells requirements of different files apart: two of one kind in a file are told apart by their order. */
function keyed(requirements: readonly Requirement[]): ReadonlyMap<string, Requirement> {
  const found = new Map<string, Requirement>();
  for (const requirement of requirements) {
    const { figure, relation, atMPerS, isOfEvent } = requirement;
    const kind = [figure, relation, atMPerS, isOfEvent ? "event" : "require"].join(" ");
    let nth = 1;
    while (found.has(`${kind} ${nth}`)) nth += 1;
    found.set(`${kind} ${nth}`, requirement);
  }
  return found;
}

function rowOf(
  first: Requirement,
  own: readonly (Requirement | undefined)[],
  bars: readonly Assessment[],
): RequirementRow | null {
  const standings = bars.flatMap((bar, i) => standingOf(own[i] ?? first, bar) ?? []);
  const [reference] = standings;
  if (!reference) return null;
  const { figure } = reference;
  const isBite = first.atMPerS !== null;
  return {
    figure: first.figure,
    key: isBite ? "maxMm" : figure.key,
    label: requirementLabel(first, figure),
    measure: isBite ? "length" : (figure.measure ?? "count"),
    relation: first.relation,
    atMPerS: first.atMPerS,
    ofEvent: first.isOfEvent === true,
    cells: standings.map(({ limit, value, margin, holds }, i) => ({
      own: own[i] !== undefined,
      limit,
      value,
      margin,
      holds,
      verdict: verdictOf(reference, { limit, margin, holds }),
    })),
  };
}

type Held = Pick<RequirementCell, "limit" | "margin" | "holds">;

/** Kept against broken decides; of two that break it, the one that is nearer. Two that keep it are alike in this. */
function verdictOf(reference: Held, bar: Held): Verdict | null {
  if (reference.holds === null || bar.holds === null || reference.margin === null) return null;
  if (reference.holds !== bar.holds) return bar.holds ? "better" : "worse";
  if (bar.holds) return "same";
  const { difference, same } = differenceOf(reference.margin, bar.margin, null, Math.abs(reference.limit));
  return same || typeof difference !== "number" ? "same" : verdictOn(difference, "more");
}
