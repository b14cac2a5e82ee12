import type { TextRange } from "../language/text.ts";

export type CompletionKind =
  | "statement"
  | "step"
  | "option"
  | "name"
  | "unit"
  | "function"
  | "constant"
  | "material"
  | "figure"
  | "variant";

/** One thing that may be written at the cursor. */
export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** A few words beside the label: a value, a form. */
  readonly detail: string;
  /** Markdown, shown on demand. */
  readonly documentation: string;
  readonly insertText: string;
  /** True where `insertText` has places to fill in, as in `${1:12 mm}`. */
  readonly isSnippet: boolean;
  /** What the text replaces: the word being typed, or nothing at the cursor. */
  readonly range: TextRange;
  /** Orders the list: what fits best comes first. */
  readonly sortText: string;
}

/** A completion before its place in the text and in the list is known. */
export type Candidate = Omit<Completion, "range" | "sortText"> & {
  /** What fits best has rank 0. */
  readonly rank: number;
};
