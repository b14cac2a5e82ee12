import { readSource } from "../analysis/source.ts";
import { fixed } from "../figures/present.ts";
import { applyEdits } from "../language/apply-edits.ts";
import type { Problem } from "../language/problem.ts";
import type { TextEdit } from "../language/text.ts";
import { type Balancing, type LetMove, stateOf, type Task } from "./balancing.ts";
import { centroidAt } from "./centroid-at.ts";
import { editFor, type MovableLet } from "./movable-let.ts";
import { neededBalance } from "./needed-balance.ts";
import { analyseAll, newProblems } from "./new-problems.ts";
import { combinations, neighbours, shopDecimals } from "./round-values.ts";
import type { Found, Unknowns } from "./solve-zero.ts";

/** A solution of the centroid as a change of the file, and whether it will do. */
export interface Attempt extends Found {
  readonly verdict: "balanced" | "too-far" | "new-problems";
  readonly balancing: Balancing;
  readonly problems: readonly Problem[];
}

/** A solution rounded, written into the text, and the text checked as any other. */
export function attemptAt(task: Task, found: Found): Attempt {
  const { source, lets, before, settings, all, variant } = task;
  const digits = roundedDigits(task, found);
  const moves = lets.map((of, i) => moveOf(source.text, of, digits[i] ?? of.text));
  const edits = editsOf(moves);
  const after = analyseAll(readSource(applyEdits(source.text, edits)), settings);
  const analysis = after.find((candidate) => candidate.variant === variant) ?? task.start;
  const state = stateOf(analysis);
  const problems = newProblems(all, after);
  const isNoBetter = state === null || state.eccentricityMm >= before.eccentricityMm;
  const balancing =
    isNoBetter && problems.length === 0
      ? unchanged(task)
      : { edits, moves, after: state ?? before, analysis };
  const isNear = balancing.after.eccentricityMm <= neededBalance(balancing.analysis).neededMm * (1 + 1e-12);
  const verdict = problems.length > 0 ? "new-problems" : isNear ? "balanced" : "too-far";
  return { ...found, verdict, balancing, problems };
}

export function moveOf(text: string, of: MovableLet, digits: string): LetMove {
  if (Number(digits) === of.value) return { name: of.name, from: of.text, to: of.text, edit: null };
  const to = of.unit === null ? digits : `${digits} ${of.unit}`;
  return { name: of.name, from: of.text, to, edit: editFor(text, of, digits) };
}

/** In text order; two new overrides for one place keep the order of the names. */
export function editsOf(moves: readonly LetMove[]): readonly TextEdit[] {
  return moves.flatMap(({ edit }) => edit ?? []).sort((a, b) => a.start - b.start);
}

/** The bar as it is. */
export function unchanged({ lets, before, start }: Task): Balancing {
  const moves = lets.map(({ name, text }) => ({ name, from: text, to: text, edit: null }));
  return { edits: [], moves, after: before, analysis: start };
}

/** So many decimals more than a shop measures, where the grade needs them. */
const MOST_EXTRA_DECIMALS = 4;
/** One let seldom reaches the axis: rounding may add this share to what is left. */
const ROUNDING_SHARE = 0.01;

/** The values with as few decimals as a shop measures, or as many as the aimed balance takes. */
function roundedDigits({ source, variant, lets, needed }: Task, { at, size }: Found): readonly string[] {
  const exact = valuesAt(lets, at);
  const goodMm = Math.max(needed.aimMm, size * (1 + ROUNDING_SHARE));
  let best: readonly string[] = exact.map(String);
  for (let extra = 0; extra <= MOST_EXTRA_DECIMALS; extra += 1) {
    const decimals = lets.map((of) => shopDecimals(of) + extra);
    const choices = lets.map((of, i) => neighbours(of, exact[i] ?? of.value, decimals[i] ?? 0));
    const measured = combinations(choices).map((values) => {
      const centroid = centroidAt(source.tree, variant, lets, values);
      return { values, mm: centroid ? Math.hypot(...centroid) : Number.POSITIVE_INFINITY };
    });
    const [nearest] = measured.sort((a, b) => a.mm - b.mm);
    if (!nearest) continue;
    best = nearest.values.map((value, i) => fixed(value, decimals[i] ?? 0));
    if (nearest.mm <= goodMm) break;
  }
  return best;
}

/** The values of the lets, each in its own unit. */
export function valuesAt(lets: readonly MovableLet[], at: Unknowns): readonly number[] {
  return lets.map(({ least, most }, i) => least + (most - least) * (at[i] ?? 0));
}
