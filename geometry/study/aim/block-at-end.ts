import type { TextEdit } from "../../language/text.ts";

/**
 * A variant with these lines as a block of its own at the end of a text.
 * @param name one that no variant of the text has, without quotation marks
 */
export function blockAtEnd(text: string, name: string, lines: readonly string[]): TextEdit {
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const block = [`variant "${name}" {`, ...lines.map((line) => `  ${line}`), "}", ""].join(lineEnd);
  const isOpen = text.length > 0 && !/[\r\n]$/.test(text);
  return { start: text.length, end: text.length, newText: `${isOpen ? lineEnd : ""}${lineEnd}${block}` };
}
