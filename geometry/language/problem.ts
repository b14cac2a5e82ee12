import type { ProblemCode } from "./problem-codes.ts";
import type { TextEdit, TextRange } from "./text.ts";

export type Severity = "error" | "warning" | "information";

/** One change to the text that would mend a problem. Edits are ordered and do not overlap. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** True where the fix is safe to apply unseen, as "fix all" does. */
  readonly safe: boolean;
}

/** What is wrong with a text, as data. The message says what is wrong, what was expected and what would work. */
export interface Problem {
  readonly severity: Severity;
  readonly code: ProblemCode;
  readonly message: string;
  readonly range: TextRange;
  readonly fixes: readonly Fix[];
}

/** Where a pass puts what it finds. */
export type Report = (problem: Problem) => void;
