import { GrowingColumns, type SyntaxKind, type TokenColumns } from "./token-columns.ts";
import { STATEMENTS, STEPS } from "./word-sets.ts";

/** The columns without the line ends inside parentheses and without all but the first of several line ends in a row. */
export function joinLines(columns: GrowingColumns): TokenColumns {
  const joined = new GrowingColumns(columns.source);
  carryTaint(columns, -1, joined);
  let depth = 0;
  for (let i = 0; i < columns.count; i += 1) {
    const kind = columns.kind(i);
    if (kind !== "newline") {
      depth = depthAfter(kind, depth);
      joined.copy(columns, i);
      continue;
    }
    const next = nextOnLine(columns, i);
    if (depth === 0 || startsAnew(columns, next)) {
      depth = 0;
      joined.push("newline", columns.start(i), columns.end(i));
      // What was left out on the lines between stood there alone.
      carryTaint(columns, next - 1, joined);
    } else {
      carryTaints(columns, i, next, joined);
    }
    i = next - 1;
  }
  return joined;
}

/** The first token behind a run of line ends. */
function nextOnLine(columns: TokenColumns, index: number): number {
  let next = index;
  while (columns.kind(next) === "newline") {
    next += 1;
  }
  return next;
}

function depthAfter(kind: SyntaxKind, depth: number): number {
  switch (kind) {
    case "(":
      return depth + 1;
    case ")":
      return Math.max(0, depth - 1);
    case "{":
    case "}":
      return 0;
    default:
      return depth;
  }
}

function carryTaints(from: TokenColumns, first: number, next: number, to: GrowingColumns): void {
  for (let i = first; i < next; i += 1) {
    carryTaint(from, i, to);
  }
}

/** What was left out behind a line end now stands behind the last token copied. */
function carryTaint(from: TokenColumns, index: number, to: GrowingColumns): void {
  if (from.isTainted(index)) {
    to.taint();
  }
}

/**
 * True where the first token of a line can only start something new, though a parenthesis is still open: the
 * parenthesis was forgotten, and its line must not swallow the rest of the file. A let may be named like a keyword, so
 * what follows the word decides.
 */
function startsAnew(columns: TokenColumns, index: number): boolean {
  const kind = columns.kind(index);
  if (kind !== "word") {
    return kind === "{" || kind === "}" || kind === "end";
  }
  const next = columns.kind(index + 1);
  if (next === "=") {
    return true;
  }
  const word = columns.text(index);
  if (!STATEMENTS.has(word) && !STEPS.has(word)) {
    return false;
  }
  return next === "newline" || next === "end" ? word === "close" : STARTS_OPERAND.has(next);
}

/** What follows the word of a statement or step, and never a name inside an expression. */
const STARTS_OPERAND: ReadonlySet<string> = new Set(["(", "{", "word", "number", "grade", "string"]);
