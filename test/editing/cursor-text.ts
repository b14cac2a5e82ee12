/** Texts in which `|` marks the cursor, and files around fragments. */
import { type Analysis, analyse } from "../../geometry/analysis/analyse.ts";
import { readSource, type Source } from "../../geometry/analysis/source.ts";

/** Lets of several kinds, for fragments to use. */
export const LETS = `let reach = 130 mm   # spin axis to the tip
let waist = 24 mm from 20 mm to 40 mm
let tail = reach - 40 mm
let tilt = 30 deg
let speed = 4200 rpm
let teeth = 2
`;

/** Statements that make a whole bar, for fragments that need one. */
export const BAR = `bar "test"
thickness 12 mm
material wear_steel_450
${LETS}`;

export interface AtCursor {
  readonly text: string;
  readonly offset: number;
}

/** The text without its mark, and where that stood. */
function readCursor(marked: string): AtCursor {
  const offset = marked.indexOf("|");
  if (offset < 0 || marked.indexOf("|", offset + 1) >= 0)
    throw new Error(`one | marks the cursor: ${marked}`);
  return { text: marked.slice(0, offset) + marked.slice(offset + 1), offset };
}

export function sourceAt(marked: string): { readonly source: Source; readonly offset: number } {
  const { text, offset } = readCursor(marked);
  return { source: readSource(text), offset };
}

export function analysisAt(
  marked: string,
  variant: string | null = null,
): { readonly analysis: Analysis; readonly offset: number } {
  const { source, offset } = sourceAt(marked);
  return { analysis: analyse(source, { variant }), offset };
}

/** The same text with the other line end. */
export function withCrLf(text: string): string {
  return text.replaceAll("\n", "\r\n");
}

export function sliceOf(
  text: string,
  { start, end }: { readonly start: number; readonly end: number },
): string {
  return text.slice(start, end);
}
