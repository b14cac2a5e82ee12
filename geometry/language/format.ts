import { placeComments } from "./format/comment-columns.ts";
import type { LaidLine } from "./format/laid-line.ts";
import { type PhysicalLine, readPhysicalLines } from "./format/physical-lines.ts";
import { readSpacing, type Spacing, spaceTokens } from "./format/spacing.ts";
import { readStanding, type Standing } from "./format/standing.ts";
import { readFile } from "./parse/read-file.ts";
import { tokenize } from "./tokenize.ts";

const BYTE_ORDER_MARK = "\ufeff";
const STEP = "  ";

/**
 * The one layout of a file: two blanks of indent in a block, one blank between words, at most one blank line in a row,
 * line ends LF. Lines are kept as lines and comments as they are; a comment behind code keeps its column or gets two
 * blanks. Lines that were not understood are left as they stand. Changes blanks only, never what the text means;
 * formatting twice is formatting once. For any text; never throws.
 */
export function format(text: string): string {
  const hasMark = text.startsWith(BYTE_ORDER_MARK);
  const body = hasMark ? text.slice(BYTE_ORDER_MARK.length) : text;
  const lines = readPhysicalLines(tokenize(body));
  const reading = readFile(body);
  const standing = readStanding(reading);
  const spacing = readSpacing(reading.tree);
  const laid = lines.map((line) => layOut(line, standing, spacing));
  const formatted = joinLines(placeComments(laid));
  return `${hasMark ? BYTE_ORDER_MARK : ""}${formatted}`;
}

function layOut(line: PhysicalLine, standing: Standing, spacing: Spacing): LaidLine {
  const place = standing.of(line);
  const comment = line.comment?.text ?? null;
  const column = (line.comment?.start ?? line.start) - line.start;
  if (!place.isUnderstood) {
    return { code: line.source, comment: null, column, isLaidOut: false };
  }
  const first = line.tokens[0];
  const inBlock = standing.isInBlock(first ?? line.comment ?? line);
  const isContinuation = place.isContinuation && first?.text !== ")";
  const indent = STEP.repeat((inBlock ? 1 : 0) + (isContinuation ? 1 : 0));
  const code = first === undefined ? "" : `${indent}${spaceTokens(line.tokens, spacing)}`;
  const isCommentAlone = first === undefined && comment !== null;
  return isCommentAlone
    ? { code: `${indent}${comment}`, comment: null, column, isLaidOut: true }
    : { code, comment, column, isLaidOut: true };
}

/** Joins lines with LF; of blank lines in a row one is kept, at the start and the end none. */
function joinLines(lines: readonly string[]): string {
  const kept: string[] = [];
  for (const line of lines) {
    const isExtraBlank = line === "" && (kept.length === 0 || kept.at(-1) === "");
    if (!isExtraBlank) {
      kept.push(line);
    }
  }
  if (kept.at(-1) === "") {
    kept.pop();
  }
  return kept.map((line) => `${line}\n`).join("");
}
