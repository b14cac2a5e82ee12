import type { Problem } from "../problem.ts";
import type { TextRange } from "../text.ts";
import type { SyntaxTree } from "../tree.ts";
import { Cursor } from "./cursor.ts";
import { parseFile } from "./parse-file.ts";
import { sortProblems } from "./problem-list.ts";
import { readTokenTable, type TokenTable } from "./token-table.ts";

/** A text read, with what the formatter needs to know beyond the tree. */
export interface FileReading {
  readonly table: TokenTable;
  readonly tree: SyntaxTree;
  readonly problems: readonly Problem[];
  /** Text that no node covers because it was not understood; its problem may stand elsewhere. */
  readonly skipped: readonly TextRange[];
}

export function readFile(text: string): FileReading {
  const table = readTokenTable(text);
  const cursor = new Cursor(table);
  const statements = parseFile(cursor);
  const problems = sortProblems([...table.problems, ...cursor.problems], text.length);
  return { table, tree: { text, statements }, problems, skipped: cursor.skipped };
}
