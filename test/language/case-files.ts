/**
 * Case files: texts with what is expected of them.
 *
 *     === title
 *     the text
 *     ==>
 *     what is expected
 *
 * What is expected is the tree as printed by `printTree`, then a line for each problem and one for each of its fixes.
 */
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { createLineIndex } from "../../geometry/language/line-index.ts";
import { parse } from "../../geometry/language/parse.ts";
import type { Fix, Problem } from "../../geometry/language/problem.ts";
import { printTree } from "./print-tree.ts";

export interface TextCase {
  readonly title: string;
  readonly input: string;
  /** Null where the case has no expectation. */
  readonly expected: string | null;
}

/** Splits a case file. Throws for one without any case. */
export function readCases(file: string): readonly TextCase[] {
  const cases = file.split(/^=== /m).slice(1).map(readCase);
  if (cases.length === 0) {
    throw new Error("the file has no case");
  }
  return cases;
}

function readCase(part: string): TextCase {
  const titleEnd = part.indexOf("\n");
  const [input = "", expected] = part.slice(titleEnd + 1).split(/^==>\n/m);
  const wanted = expected?.trim() ?? "";
  return { title: part.slice(0, titleEnd), input, expected: wanted === "" ? null : wanted };
}

/** Tree and problems of a text in the form that case files expect. */
export function describeParse(text: string): string {
  const { tree, problems } = parse(text);
  const trees = printTree(tree);
  return (
    [...trees, ...problems.flatMap((problem) => describeProblem(text, problem))].join("\n").trim() ||
    "(nothing)"
  );
}

/** `! 2:7 code «text» message`, the text being the problem's range, and an arrow line for each fix. */
function describeProblem(text: string, { code, message, range, fixes }: Problem): readonly string[] {
  const { line, column } = createLineIndex(text).position(range.start);
  const inside = text.slice(range.start, range.end).replaceAll("\n", "⏎");
  return [
    `! ${line}:${column} ${code} «${inside}» ${message}`,
    ...fixes.map((fix) => `  -> ${fix.title}: ${changedLines(text, fix)}${fix.safe ? " (safe)" : ""}`),
  ];
}

/** The lines that a fix changes, as they then are. */
function changedLines(text: string, fix: Fix): string {
  const before = text.split("\n");
  const after = applyEdits(text, fix.edits).split("\n");
  let start = 0;
  while (start < after.length && before[start] === after[start]) {
    start += 1;
  }
  let end = 0;
  while (end < Math.min(before.length, after.length) - start && before.at(-1 - end) === after.at(-1 - end)) {
    end += 1;
  }
  return after.slice(start, after.length - end).join("⏎");
}
