import type { Fix, Problem, Severity } from "../problem.ts";
import type { ProblemCode } from "../problem-codes.ts";
import type { TextEdit, TextRange } from "../text.ts";

/** A problem that keeps the file from being computed. */
export function failure(
  code: ProblemCode,
  range: TextRange,
  message: string,
  fixes: readonly Fix[] = [],
): Problem {
  return makeProblem("error", code, range, message, fixes);
}

/** A problem that casts doubt on the file and no more. */
export function doubt(
  code: ProblemCode,
  range: TextRange,
  message: string,
  fixes: readonly Fix[] = [],
): Problem {
  return makeProblem("warning", code, range, message, fixes);
}

function makeProblem(
  severity: Severity,
  code: ProblemCode,
  { start, end }: TextRange,
  message: string,
  fixes: readonly Fix[],
): Problem {
  return { severity, code, message, range: { start, end }, fixes };
}

/** A fix that replaces one stretch of text; the user decides, unless it is told to be `safe`. */
export function rewrite(title: string, { start, end }: TextRange, newText: string, safe = false): Fix {
  return fix(title, [{ start, end, newText }], safe);
}

export function fix(title: string, edits: readonly TextEdit[], safe = false): Fix {
  return { title, edits, safe };
}

/** "; did you mean reach?" with its fix, or the full stop of a message where no candidate is near. */
export function didYouMean(range: TextRange, near: string | null): { hint: string; fixes: readonly Fix[] } {
  if (near === null) return { hint: ".", fixes: [] };
  return { hint: `; did you mean ${near}?`, fixes: [rewrite(`Replace with '${near}'`, range, near)] };
}
