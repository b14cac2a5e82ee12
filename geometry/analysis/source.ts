import { variantNames } from "../language/evaluate.ts";
import { createLineIndex, type LineIndex } from "../language/line-index.ts";
import { parse } from "../language/parse.ts";
import type { Problem } from "../language/problem.ts";
import type { SyntaxTree } from "../language/tree.ts";

/** A text, read once: what every later question about it starts from. */
export interface Source {
  readonly text: string;
  readonly tree: SyntaxTree;
  /** What was wrong with the text itself. */
  readonly problems: readonly Problem[];
  readonly lines: LineIndex;
  /** Names of the variants, in file order. */
  readonly variants: readonly string[];
}

/** Read a text. Any text gives a source; what is wrong with it stands in `problems`. */
export function readSource(text: string): Source {
  const { tree, problems } = parse(text);
  return { text, tree, problems, lines: createLineIndex(text), variants: variantNames(tree) };
}
