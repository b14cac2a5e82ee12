import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { PREVIEW_STRINGS } from "../extension/preview/strings.ts";
import { STUDIES_STRINGS } from "../extension/studies/strings.ts";

/** A call of the editor's translation with a plain text, wherever the line breaks. */
const CALL = /\bt\(\s*("(?:[^"\\\n]|\\.)*")/g;

/** Every text of the host and of the pages, each once, in order, as the content of a translation bundle. */
export async function collectTexts(root: string): Promise<string> {
  const folder = join(root, "extension/host");
  const names = (await readdir(folder, { recursive: true })).filter((name) => name.endsWith(".ts"));
  const sources = await Promise.all(names.map((name) => readFile(join(folder, name), "utf8")));
  const inHost = sources.flatMap((source) => [...source.matchAll(CALL)].map(([, text]) => parseText(text)));
  const texts = [
    ...new Set([...inHost, ...Object.values(PREVIEW_STRINGS), ...Object.values(STUDIES_STRINGS)]),
  ].sort();
  return `${JSON.stringify(Object.fromEntries(texts.map((text) => [text, text])), null, 2)}\n`;
}

function parseText(literal = '""'): string {
  const text: unknown = JSON.parse(literal);
  return String(text);
}
