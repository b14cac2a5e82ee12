import { readFileSync } from "node:fs";
import { resolve } from "node:path";

const SAMPLES = resolve(import.meta.dirname, "../../samples");

/** The two-toothed sample, which the tests type in. */
export const HERON = readFileSync(resolve(SAMPLES, "pickled-heron-two-tooth.bar"), "utf8");

/** The line of a text that starts so, counted from 1, as the editor counts. */
export function lineOf(text: string, start: string): number {
  const line = text.split("\n").findIndex((candidate) => candidate.trimStart().startsWith(start));
  if (line < 0) throw new Error(`No line starts with "${start}".`);
  return line + 1;
}
