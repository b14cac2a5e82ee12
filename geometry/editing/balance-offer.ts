/**
 * What `balance by` offers: to write the values that balance the bar. Finding them takes as long as several analyses,
 * so that a host asks when a builder looks, not with each key.
 */
import type { Analysis } from "../analysis/analyse.ts";
import type { Source } from "../analysis/source.ts";
import type { Settings } from "../figures/settings.ts";
import type { Fix, Problem } from "../language/problem.ts";
import type { TextEdit, TextRange } from "../language/text.ts";
import { type BalanceBy, balanceBy, told } from "../study/balance-by.ts";

export interface BalanceOffer {
  /** The statement that says which lets may be moved. */
  readonly range: TextRange;
  /** One line: what would change, or how the bar stands. */
  readonly title: string;
  /** More to it: why the bar cannot be balanced. */
  readonly detail: string | null;
  /** None where there is nothing to write. */
  readonly edits: readonly TextEdit[];
}

export interface OfferOptions {
  readonly settings?: Partial<Settings>;
}

/** Where the offer stands, known without any work; null in a file that names no lets to balance by. */
export function balancePlace({ design }: Pick<Analysis, "design">): TextRange | null {
  return design.balance?.range ?? null;
}

/** The offer at the statement, for the bar as it stands. */
export function balanceOffer(analysis: Analysis, options: OfferOptions = {}): BalanceOffer | null {
  const { design, source } = analysis;
  if (!design.balance) return null;
  const { names, range } = design.balance;
  const joined = names.join(", ");
  if (isLong(analysis)) return { range, title: `Balance by ${joined}: ${TOO_LONG}`, detail: null, edits: [] };
  const result = balanceBy(source, { names, ...options });
  if (!result.solved) return { range, title: `Not balanced by ${joined}`, detail: result.message, edits: [] };
  if (result.edits.length === 0)
    return { range, title: `Balanced by ${joined}: ${told(result.after)}`, detail: null, edits: [] };
  const grades = `${told(result.before)} → ${told(result.after)}`;
  return {
    range,
    title: `Balance: ${changesOf(result, " → ")} (${grades})`,
    detail: null,
    edits: result.edits,
  };
}

/**
 * Fixes for a problem of the balance, in the bar as it stands and in each variant that has it.
 * @param analysisOf what gives the analysis of a variant, `null` for the bar as it stands
 */
export function balanceFixes(
  source: Source,
  problem: Problem,
  analysisOf: (variant: string | null) => Analysis,
  options: OfferOptions = {},
): readonly Fix[] {
  const names = analysisOf(null).design.balance?.names;
  if (problem.code !== "imbalance-over-grade" || !names || isLong(analysisOf(null))) return [];
  const has = (variant: string | null) => analysisOf(variant).problems.some((other) => isAt(other, problem));
  // A bar that is off balance is mended first: most of its variants follow.
  const variants = has(null) ? [null] : source.variants.filter(has).slice(0, MOST_VARIANTS);
  return variants.flatMap((variant) => {
    const result = balanceBy(source, { names, variant, ...options });
    if (!result.solved || result.edits.length === 0) return [];
    const of = variant === null ? "" : ` "${variant}"`;
    const title = `Balance${of} by ${names.join(", ")}: ${changesOf(result, " = ")}`;
    return [{ title, edits: result.edits, safe: false }];
  });
}

/** An outline of more segments takes too long to balance while somebody types: half a second and more. */
const MOST_SEGMENTS = 600;
const TOO_LONG = "a long outline, use barwright balance in a terminal";

function isLong({ outline }: Analysis): boolean {
  if (!outline) return false;
  const count = [outline.outer, ...outline.inner].reduce((sum, { segments }) => sum + segments.length, 0);
  return count > MOST_SEGMENTS;
}

/** Each variant takes a search of its own. */
const MOST_VARIANTS = 3;

function isAt(a: Problem, b: Problem): boolean {
  return a.code === b.code && a.range.start === b.range.start && a.range.end === b.range.end;
}

/** `tail = 89.77 mm`, or with an arrow from the value that is there. */
function changesOf(result: Extract<BalanceBy, { solved: true }>, sign: " = " | " → "): string {
  return result.moves
    .filter(({ edit }) => edit !== null)
    .map(({ name, from, to }) => (sign === " = " ? `${name} = ${to}` : `${name} ${from} → ${to}`))
    .join(", ");
}
