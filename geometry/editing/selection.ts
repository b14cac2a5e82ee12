import type { Source } from "../analysis/source.ts";
import type { TextRange } from "../language/text.ts";
import { tokenEnd, tokenize, tokenKindAt } from "../language/tokenize.ts";
import { nodeAt, type TreeNode } from "../language/tree-walk.ts";
import { clampOffset } from "./cursor-place.ts";

/**
 * What "expand selection" selects from an offset on, inner to outer: the word, each part of the line around it, the
 * step, the block, the statement, the whole text. Each range holds the one before and is larger.
 */
export function selectionRanges({ text, tree }: Source, cursor: number): readonly TextRange[] {
  const offset = clampOffset(text, cursor);
  const nodes = [...nodeAt(tree, offset)].reverse().flatMap((node) => rangesOf(node, text));
  return growing([...tokenRanges(text, offset), ...nodes, { start: 0, end: text.length }], offset);
}

/** The token at an offset, and of a string what stands in its quotation marks. */
function tokenRanges(text: string, offset: number): readonly TextRange[] {
  const start = lineStart(text, offset);
  const tokens = tokenize(text.slice(start, lineEnd(text, offset)));
  const touching = tokens.filter(
    (token) => token.kind !== "space" && start + token.start <= offset && offset <= start + token.end,
  );
  const token = touching.find(({ kind }) => kind === "word" || kind === "number") ?? touching[0];
  if (token === undefined) return [];
  const range = { start: start + token.start, end: start + token.end };
  return token.kind === "string" ? [{ start: range.start + 1, end: range.end - 1 }, range] : [range];
}

function lineStart(text: string, offset: number): number {
  let start = offset;
  while (start > 0 && tokenKindAt(text, start - 1) !== "newline") start -= 1;
  return start;
}

function lineEnd(text: string, offset: number): number {
  return offset < text.length ? tokenEnd(text, offset, "comment") : offset;
}

/** A node's range; of a block and of parentheses what stands inside them first. */
function rangesOf({ type, node }: TreeNode, text: string): readonly TextRange[] {
  const { range } = node;
  const isEnclosed = /^[({]/.test(text.charAt(range.start)) && /[)}]$/.test(text.charAt(range.end - 1));
  if (!isEnclosed || (type !== "path" && type !== "point" && type !== "expression")) return [range];
  return [trimmed(text, { start: range.start + 1, end: range.end - 1 }), range];
}

function trimmed(text: string, { start, end }: TextRange): TextRange {
  const inside = text.slice(start, end);
  const lead = inside.length - inside.trimStart().length;
  return lead === inside.length
    ? { start, end }
    : { start: start + lead, end: start + inside.trimEnd().length };
}

function growing(ranges: readonly TextRange[], offset: number): readonly TextRange[] {
  const kept: TextRange[] = [];
  for (const { start, end } of ranges) {
    const last = kept.at(-1) ?? { start: offset, end: offset };
    const holds = start <= last.start && last.end <= end;
    const isLarger = end - start > last.end - last.start;
    if (holds && isLarger) kept.push({ start, end });
  }
  return kept;
}
