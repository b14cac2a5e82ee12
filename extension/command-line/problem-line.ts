import type { LineIndex } from "../../geometry/language/line-index.ts";
import type { Problem } from "../../geometry/language/problem.ts";
import { paint } from "./paint.ts";
import type { Terminal } from "./world.ts";

/** `file:line:column severity code message`, on one line whatever the message holds. */
export function problemLine(problem: Problem, lines: LineIndex, file: string, terminal: Terminal): string {
  const { line, column } = lines.position(problem.range.start);
  const colour = problem.severity === "error" ? "red" : problem.severity === "warning" ? "yellow" : "cyan";
  const severity = paint(problem.severity, colour, terminal);
  return `${file}:${line}:${column} ${severity} ${problem.code} ${oneLine(problem.message)}`;
}

/** Names from the file may hold anything: control characters would move the reader's cursor. */
export function oneLine(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  return text.replace(/[\u0000-\u001f\u007f-\u009f]+/g, " ");
}
