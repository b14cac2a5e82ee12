/**
 * The tokens that matter to the parser: blanks and comments left out, typographic characters read as meant, line ends
 * kept only where a statement may end. Columns instead of objects, because a file may have millions of tokens.
 */
import type { Problem } from "../problem.ts";
import type { TextRange } from "../text.ts";
import { isClosedString, stringContent, tokenEnd, tokenize, tokenKindAt } from "../tokenize.ts";
import { nameCharacter, plainCharacter, plainWord } from "../typography.ts";
import { deleteFix, fixOf, replaceFix } from "./fixes.ts";
import { createProblemList } from "./problem-list.ts";
import { STATEMENTS, STEPS } from "./word-sets.ts";

export type SyntaxKind = "word" | "number" | "grade" | "string" | "symbol" | "newline" | "end";

/** Every column has one entry a token; the last token is `end`. */
export interface TokenTable {
  readonly source: string;
  readonly kinds: readonly SyntaxKind[];
  readonly starts: readonly number[];
  readonly ends: readonly number[];
  /** What a token means, where that is not what stands in the source. */
  readonly meanings: ReadonlyMap<number, string>;
  /** Tokens right behind which a character without meaning was left out; -1 stands for the start of the text. */
  readonly tainted: ReadonlySet<number>;
  /** From each `{` that is closed to its `}`. */
  readonly closers: ReadonlyMap<number, number>;
  /** The names that stand behind `let`. */
  readonly letNames: ReadonlySet<string>;
  readonly problems: readonly Problem[];
}

interface Columns {
  readonly source: string;
  kinds: SyntaxKind[];
  starts: number[];
  ends: number[];
  readonly meanings: Map<number, string>;
  readonly tainted: Set<number>;
}

/** Reads a text into a token table. Linear; never throws. */
export function readTokenTable(source: string): TokenTable {
  const columns: Columns = {
    source,
    kinds: [],
    starts: [],
    ends: [],
    meanings: new Map(),
    tainted: new Set(),
  };
  const problems = createProblemList();
  let offset = 0;
  while (offset < source.length) {
    offset = readToken(columns, offset, problems.add);
  }
  push(columns, "end", source.length, source.length);
  const joined = joinLines(columns);
  return {
    ...joined,
    closers: matchBraces(joined),
    letNames: findLetNames(joined),
    problems: problems.found,
  };
}

export function tokenTextOf(table: Columns | TokenTable, index: number): string {
  return table.meanings.get(index) ?? table.source.slice(table.starts[index], table.ends[index]);
}

function push(columns: Columns, kind: SyntaxKind, start: number, end: number): void {
  columns.kinds.push(kind);
  columns.starts.push(start);
  columns.ends.push(end);
}

/** Reads the token at `start` into the columns and returns where the next one starts. */
function readToken(columns: Columns, start: number, add: (problem: Problem) => void): number {
  const { source } = columns;
  const kind = tokenKindAt(source, start);
  const end = tokenEnd(source, start, kind);
  switch (kind) {
    case "space":
    case "comment":
      return end;
    case "unknown":
      readUnknown(columns, { start, end }, add);
      return end;
    case "string":
      return readString(columns, { start, end }, add);
    case "word":
      readWord(columns, { start, end }, add);
      return end;
    case "symbol":
      if (source.startsWith("//", start)) {
        return readSlashComment(columns, start, add);
      }
      push(columns, kind, start, end);
      return end;
    default:
      push(columns, kind, start, end);
      return end;
  }
}

function readUnknown(columns: Columns, range: TextRange, add: (problem: Problem) => void): void {
  const text = columns.source.slice(range.start, range.end);
  const plain = plainCharacter(text);
  if (plain !== null) {
    add(badCharacter(range, `${nameCharacter(text)} is written ${plain} in an outline file.`, plain));
    pushMeaning(columns, plain, range);
    return;
  }
  add(unknownCharacters(text, range));
  columns.tainted.add(columns.kinds.length - 1);
}

/** A typographic character may mean several tokens: `²` is `^` and `2`. */
function pushMeaning(columns: Columns, plain: string, range: TextRange): void {
  for (const token of tokenize(plain)) {
    if (token.kind === "word" || token.kind === "symbol" || token.kind === "number") {
      columns.meanings.set(columns.kinds.length, token.text);
      push(columns, token.kind, range.start, range.end);
    }
  }
}

function badCharacter(range: TextRange, message: string, plain: string): Problem {
  const fixes = [replaceFix(range, plain, true)];
  return { severity: "error", code: "bad-character", message, range, fixes };
}

function unknownCharacters(text: string, range: TextRange): Problem {
  const first = nameCharacter(String.fromCodePoint(text.codePointAt(0) ?? 0));
  const isOne = text.length === String.fromCodePoint(text.codePointAt(0) ?? 0).length;
  const message = isOne
    ? `${first} has no meaning in an outline file.`
    : `The characters from ${first} on have no meaning in an outline file.`;
  const what = isOne && first.startsWith("'") ? text : "the characters";
  return {
    severity: "error",
    code: "bad-character",
    message: `${message}${hintFor(text)}`,
    range,
    fixes: [deleteFix(range, what)],
  };
}

function hintFor(text: string): string {
  if (text === ";") {
    return " A statement ends where its line ends.";
  }
  return text === "'" ? ' A name stands in double quotes: "long tail".' : "";
}

function readWord(columns: Columns, range: TextRange, add: (problem: Problem) => void): void {
  const word = columns.source.slice(range.start, range.end);
  const plain = plainWord(word);
  if (plain !== null) {
    add(badCharacter(range, `'${word}' is written ${plain} in an outline file.`, plain));
    columns.meanings.set(columns.kinds.length, plain);
  }
  push(columns, "word", range.start, range.end);
}

/** `//` starts a comment in many languages; the rest of the line is read as one. */
function readSlashComment(columns: Columns, start: number, add: (problem: Problem) => void): number {
  const slashes = { start, end: start + 2 };
  add({
    severity: "error",
    code: "bad-character",
    message: "A comment starts with #.",
    range: slashes,
    fixes: [replaceFix(slashes, "#", true)],
  });
  return tokenEnd(columns.source, start, "comment");
}

function readString(columns: Columns, range: TextRange, add: (problem: Problem) => void): number {
  const text = columns.source.slice(range.start, range.end);
  const isGluedToNumber = columns.kinds.at(-1) === "number" && columns.ends.at(-1) === range.start;
  if (isGluedToNumber) {
    return readInchSigns(columns, range, add);
  }
  const part = isClosedString(text) ? range : unclosedPart(text, range);
  reportQuotes(text, part, add);
  push(columns, "string", part.start, part.end);
  return part.end;
}

/** A quotation mark right behind a number is an inch sign: it is read as the inch, and what follows as usual. */
function readInchSigns(columns: Columns, range: TextRange, add: (problem: Problem) => void): number {
  const mark = { start: range.start, end: range.start + 1 };
  add({
    severity: "error",
    code: "unknown-unit",
    message: "The inch is written in: 2.5 in.",
    range: mark,
    fixes: [fixOf("Replace with ' in'", [{ ...mark, newText: " in" }], true)],
  });
  columns.meanings.set(columns.kinds.length, "in");
  push(columns, "word", mark.start, mark.end);
  return mark.end;
}

/** Of a string that is not closed, the part up to a brace or comment: the quote was most likely forgotten before it. */
function unclosedPart(text: string, range: TextRange): TextRange {
  const stop = text.search(/[{#]/);
  const part = (stop > 0 ? text.slice(0, stop) : text).trimEnd();
  return { start: range.start, end: range.start + part.length };
}

function reportQuotes(text: string, range: TextRange, add: (problem: Problem) => void): void {
  const part = text.slice(0, range.end - range.start);
  const plain = `"${stringContent(part)}"`;
  if (!isClosedString(part)) {
    add({
      severity: "error",
      code: "missing-part",
      message: `The closing quotation mark is missing: ${plain}.`,
      range,
      fixes: [fixOf("Insert '\"'", [{ ...range, newText: plain }])],
    });
  } else if (part !== plain) {
    add(badCharacter(range, `Names stand in straight quotation marks: ${plain}.`, plain));
  }
}

/** Leaves out line ends inside parentheses, and all but one of several in a row. */
function joinLines(columns: Columns): Columns {
  const joined: Columns = {
    ...columns,
    kinds: [],
    starts: [],
    ends: [],
    meanings: new Map(),
    tainted: new Set(),
  };
  carryTaint(columns, -1, joined);
  let depth = 0;
  for (let i = 0; i < columns.kinds.length; i += 1) {
    if (columns.kinds[i] === "newline") {
      const next = nextOnLine(columns, i);
      i = next - 1;
      if (depth === 0 || startsAnew(columns, next)) {
        depth = 0;
        copyToken(columns, i, joined);
      } else {
        carryTaint(columns, i, joined);
      }
    } else {
      depth = depthAfter(columns, i, depth);
      copyToken(columns, i, joined);
    }
  }
  return joined;
}

/** The first token behind a run of line ends. */
function nextOnLine(columns: Columns, index: number): number {
  let next = index;
  while (columns.kinds[next] === "newline") {
    next += 1;
  }
  return next;
}

function depthAfter(columns: Columns, index: number, depth: number): number {
  if (columns.kinds[index] !== "symbol") {
    return depth;
  }
  switch (tokenTextOf(columns, index)) {
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

function copyToken(from: Columns, index: number, to: Columns): void {
  const target = to.kinds.length;
  const meaning = from.meanings.get(index);
  if (meaning !== undefined) {
    to.meanings.set(target, meaning);
  }
  push(to, from.kinds[index] ?? "end", from.starts[index] ?? 0, from.ends[index] ?? 0);
  carryTaint(from, index, to);
}

/** What was left out behind token `index` now stands behind the last token copied. */
function carryTaint(from: Columns, index: number, to: Columns): void {
  if (from.tainted.has(index)) {
    to.tainted.add(to.kinds.length - 1);
  }
}

/**
 * True where the first token of a line can only start something new, though a parenthesis is still open: the
 * parenthesis was forgotten, and its line must not swallow the rest of the file. A let may be named like a keyword, so
 * what follows the word decides.
 */
function startsAnew(columns: Columns, index: number): boolean {
  const text = tokenTextOf(columns, index);
  if (columns.kinds[index] === "symbol") {
    return text === "{" || text === "}";
  }
  if (columns.kinds[index] !== "word") {
    return columns.kinds[index] === "end";
  }
  const nextKind = columns.kinds[index + 1];
  const next = tokenTextOf(columns, index + 1);
  if (nextKind === "symbol") {
    return next === "=" || (isStart(text) && (next === "(" || next === "{"));
  }
  return isStart(text) && (nextKind !== "newline" || text === "close");
}

function isStart(word: string): boolean {
  return STATEMENTS.has(word) || STEPS.has(word);
}

function matchBraces(columns: Columns): ReadonlyMap<number, number> {
  const closers = new Map<number, number>();
  const open: number[] = [];
  for (let i = 0; i < columns.kinds.length; i += 1) {
    if (columns.kinds[i] !== "symbol") {
      continue;
    }
    const text = tokenTextOf(columns, i);
    if (text === "{") {
      open.push(i);
    } else if (text === "}") {
      const opener = open.pop();
      if (opener !== undefined) {
        closers.set(opener, i);
      }
    }
  }
  return closers;
}

function findLetNames(columns: Columns): ReadonlySet<string> {
  const names = new Set<string>();
  for (let i = 0; i + 1 < columns.kinds.length; i += 1) {
    const isLet = columns.kinds[i] === "word" && tokenTextOf(columns, i) === "let";
    if (isLet && columns.kinds[i + 1] === "word") {
      names.add(tokenTextOf(columns, i + 1));
    }
  }
  return names;
}
