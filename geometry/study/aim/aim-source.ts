import { readSource, type Source } from "../../analysis/source.ts";

/**
 * A source with another aim than its own: as if the line stood at its end. Everything else stands where it stood, so
 * that edits made for it fit the text as it is.
 * @param aim what stands behind the word `aim`; of several lines it is made one
 */
export function withAim(source: Source, aim: string): { readonly source: Source; readonly start: number } {
  const blanked = source.tree.statements
    .filter(({ kind }) => kind === "aim")
    .reduce(
      (text, { range: { start, end } }) =>
        text.slice(0, start) + blank(text.slice(start, end)) + text.slice(end),
      source.text,
    );
  const head = `${blanked}\n`;
  const line = aim.replace(/^\s*aim\s/, "").replace(/[\s\u2028\u2029]+/g, " ");
  return { source: readSource(`${head}aim ${line}\n`), start: head.length };
}

/** Line ends are kept: they end comments. */
function blank(text: string): string {
  return text.replace(/[^\r\n]/g, " ");
}
