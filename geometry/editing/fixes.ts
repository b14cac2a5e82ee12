import type { Fix, Problem } from "../language/problem.ts";
import type { TextEdit, TextRange } from "../language/text.ts";

/** The edits of all fixes that are safe to make unseen, in text order; of fixes that overlap the first is taken. */
export function safeFixes(problems: readonly Problem[]): readonly TextEdit[] {
  const taken: TextEdit[] = [];
  const inTextOrder = [...problems].sort((a, b) => a.range.start - b.range.start);
  for (const { fixes } of inTextOrder) {
    const edits = fixes.find(({ safe }) => safe)?.edits ?? [];
    if (edits.every((edit) => taken.every((other) => isApart(edit, other)))) taken.push(...edits);
  }
  return taken.sort((a, b) => a.start - b.start || a.end - b.end);
}

/** Two insertions at one place are not apart: they would stand in an order that neither of them had in mind. */
function isApart(a: TextEdit, b: TextEdit): boolean {
  const touches = a.end === b.start || b.end === a.start;
  const isEmpty = a.start === a.end || b.start === b.end;
  return (a.end <= b.start || b.end <= a.start) && !(touches && isEmpty);
}

/** A fix with the problem that it mends. */
export interface OfferedFix {
  readonly problem: Problem;
  readonly fix: Fix;
}

/** The fixes of all problems that a range touches; the cursor may stand right behind a problem. */
export function fixesAt(problems: readonly Problem[], range: TextRange): readonly OfferedFix[] {
  return problems
    .filter((problem) => problem.range.start <= range.end && range.start <= problem.range.end)
    .flatMap((problem) => problem.fixes.map((fix) => ({ problem, fix })));
}
