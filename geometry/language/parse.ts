import { readFile } from "./parse/read-file.ts";
import type { Problem } from "./problem.ts";
import type { SyntaxTree } from "./tree.ts";

export interface ParseResult {
  readonly tree: SyntaxTree;
  /** In the order of the text; all are errors. At most 500, then one that says that there are more. */
  readonly problems: readonly Problem[];
}

/**
 * Reads any text into a tree and the problems found on the way. A bad line costs that line; one mistake gives one
 * problem. Never throws; linear in the text's length.
 */
export function parse(text: string): ParseResult {
  const { tree, problems } = readFile(text);
  return { tree, problems };
}
