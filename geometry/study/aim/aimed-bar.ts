/** What a search found, as a change of the text: written, and checked as any other text. */
import { type Analysis, analyse } from "../../analysis/analyse.ts";
import { readSource, type Source } from "../../analysis/source.ts";
import { applyEdits } from "../../language/apply-edits.ts";
import { editsOf, moveOf } from "../attempt.ts";
import { analyseAll, newProblems } from "../new-problems.ts";
import { withAim } from "./aim-source.ts";
import type { AimTask } from "./aim-task.ts";
import type { AimedBar } from "./aiming.ts";
import type { Measured, Place } from "./rating.ts";

/** At a bound to within this share of the way between the two. */
const AT_BOUND = 1e-9;

/** Nearer than this share to its limit a bar is held back by it. */
const REACHED_SHARE = 0.01;

/**
 * The bar with these numbers written for its lets.
 * @param exact the bar before its values were rounded: what that pressed against holds the rounded one back too
 */
export function aimedBar(task: AimTask, at: Place, digits: readonly string[], exact: Measured): AimedBar {
  const { source, request, lets, variant } = task;
  const { settings = {} } = request;
  const moves = lets.map((of, i) => moveOf(source.text, of, digits[i] ?? of.text));
  const edits = editsOf(moves);
  const changed = readSource(applyEdits(source.text, edits));
  const after = analyseAll(changed, settings);
  const known = analyseAll(source, settings);
  const own = after.findIndex((analysis) => analysis.variant === variant);
  const others = (all: readonly Analysis[]) => all.filter((_, i) => i !== own);
  const analysis = after[own] ?? task.start;
  const stated =
    request.aim === undefined ? analysis : analyse(aimedSource(changed, request.aim), { variant, settings });
  const standings = task.standings(stated);
  return {
    lets: moves.map((move, i) => ({ ...move, reached: boundAt(at[i] ?? 0) })),
    goals: standings.goals,
    limits: standings.limits.map((limit, i) => ({
      ...limit,
      isReached: Math.abs(exact.excess[i] ?? 1) <= REACHED_SHARE,
    })),
    edits,
    problems: newProblems(known.slice(own, own + 1), after.slice(own, own + 1)),
    elsewhere: newProblems(others(known), others(after)),
    analysis,
    before: task.start,
  };
}

function aimedSource(source: Source, aim: string): Source {
  return withAim(source, aim).source;
}

function boundAt(share: number): "least" | "most" | null {
  if (share <= AT_BOUND) return "least";
  return share >= 1 - AT_BOUND ? "most" : null;
}
