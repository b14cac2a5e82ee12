import { Cursor } from "./parse/cursor.ts";
import { parseFile } from "./parse/parse-file.ts";
import { sortProblems } from "./parse/problem-list.ts";
import { readTokenTable } from "./parse/token-table.ts";
import type { Problem } from "./problem.ts";
import type { TextRange } from "./text.ts";
import type { SyntaxTree } from "./tree.ts";

export interface ParseResult {
  readonly tree: SyntaxTree;
  /** In the order of the text; all are errors. At most 500, then one that says that there are more. */
  readonly problems: readonly Problem[];
  /** Text that no node of the tree covers because it was not understood. Its problem may stand elsewhere. */
  readonly skipped: readonly TextRange[];
}

/**
 * Reads any text into a tree and the problems found on the way. A bad line costs that line; one mistake gives one
 * problem. Never throws; linear in the text's length.
 */
export function parse(text: string): ParseResult {
  const table = readTokenTable(text);
  const cursor = new Cursor(table);
  const statements = parseFile(cursor);
  const problems = sortProblems([...table.problems, ...cursor.problems], text.length);
  return { tree: { text, statements }, problems, skipped: cursor.skipped };
}
