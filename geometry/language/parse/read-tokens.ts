import { isWordStart } from "../characters.ts";
import type { Fix, Problem } from "../problem.ts";
import type { TextRange } from "../text.ts";
import { isClosedString, stringContent, tokenEnd, tokenKindAt } from "../tokenize.ts";
import { nameCharacter, plainCharacter, plainWord } from "../typography.ts";
import { deleteFix, fixOf, replaceFix } from "./fixes.ts";
import { INCH, plainTokens } from "./plain-tokens.ts";
import type { ProblemList } from "./problem-list.ts";
import { GrowingColumns, symbolKind } from "./token-columns.ts";

/** Reads a text into columns, line ends and all. Reports characters that are not as they should be. */
export function readTokens(source: string, problems: ProblemList): GrowingColumns {
  const columns = new GrowingColumns(source);
  let offset = 0;
  while (offset < source.length) {
    offset = readToken(columns, offset, problems);
  }
  columns.push("end", source.length, source.length);
  return columns;
}

/** Reads the token at `start` into the columns and returns where the next one starts. */
function readToken(columns: GrowingColumns, start: number, problems: ProblemList): number {
  const { source } = columns;
  const kind = tokenKindAt(source, start);
  const end = tokenEnd(source, start, kind);
  switch (kind) {
    case "space":
    case "comment":
      return end;
    case "unknown":
      readUnknown(columns, { start, end }, problems);
      return end;
    case "string":
      return readString(columns, { start, end }, problems);
    case "word":
      readWord(columns, start, end, problems);
      return end;
    case "symbol":
      return readSymbol(columns, start, end, problems);
    default:
      columns.push(kind, start, end);
      return end;
  }
}

function readSymbol(columns: GrowingColumns, start: number, end: number, problems: ProblemList): number {
  const { source } = columns;
  const kind = symbolKind(end - start === 1 ? source.charAt(start) : source.slice(start, end));
  if (kind === "/" && source.charAt(end) === "/") {
    return readSlashComment(columns, start, problems);
  }
  columns.push(kind, start, end);
  return end;
}

function readUnknown(columns: GrowingColumns, range: TextRange, problems: ProblemList): void {
  const text = columns.source.slice(range.start, range.end);
  const plain = plainCharacter(text);
  if (plain === null) {
    problems.make(() => unknownCharacters(columns.source, range));
    columns.taint();
    return;
  }
  problems.make(() =>
    badCharacter(range, `${nameCharacter(text)} is written ${plain} in an outline file.`, plain),
  );
  pushMeaning(columns, plain, range);
}

/** A typographic character may mean several tokens: `²` is `^` and `2`. */
function pushMeaning(columns: GrowingColumns, plain: string, range: TextRange): void {
  for (const { kind, text } of plainTokens(plain)) {
    if (kind === "word" || kind === "number") {
      columns.push(kind, range.start, range.end, text);
    } else if (kind === "symbol") {
      columns.push(symbolKind(text), range.start, range.end, text);
    }
  }
}

function badCharacter(range: TextRange, message: string, plain: string): Problem {
  const fixes = [replaceFix(range, plain, true)];
  return { severity: "error", code: "bad-character", message, range, fixes };
}

function unknownCharacters(source: string, range: TextRange): Problem {
  const text = source.slice(range.start, range.end);
  const character = String.fromCodePoint(text.codePointAt(0) ?? 0);
  const first = nameCharacter(character);
  const message =
    text === character
      ? `${first} has no meaning in an outline file.`
      : `The characters from ${first} on have no meaning in an outline file.`;
  const isSeparator = text === ";" && isWordBehind(source, range.end);
  const fix = isSeparator ? lineFix(source, range) : deleteFix(source, range);
  return {
    severity: "error",
    code: "bad-character",
    message: `${message}${hintFor(text)}`,
    range,
    fixes: [fix],
  };
}

function isWordBehind(source: string, offset: number): boolean {
  const next = endOfBlanks(source, offset);
  return next < source.length && isWordStart(source, next);
}

function endOfBlanks(source: string, offset: number): number {
  let end = offset;
  while (source.charAt(end) === " ") {
    end += 1;
  }
  return end;
}

function lineFix(source: string, range: TextRange): Fix {
  return fixOf("Start a new line", [
    { start: range.start, end: endOfBlanks(source, range.end), newText: "\n" },
  ]);
}

function hintFor(text: string): string {
  if (text === ";") {
    return " A statement ends where its line ends.";
  }
  return text === "'" ? ' A name stands in double quotes: "long tail".' : "";
}

function readWord(columns: GrowingColumns, start: number, end: number, problems: ProblemList): void {
  const word = columns.source.slice(start, end);
  const plain = plainWord(word);
  if (plain !== null) {
    const message = `'${word}' is written ${plain} in an outline file.`;
    problems.make(() => badCharacter({ start, end }, message, plain));
  }
  columns.push("word", start, end, plain);
}

/** `//` starts a comment in many languages; the rest of the line is read as one. */
function readSlashComment(columns: GrowingColumns, start: number, problems: ProblemList): number {
  const slashes = { start, end: start + 2 };
  problems.make(() => badCharacter(slashes, "A comment starts with #.", "#"));
  return tokenEnd(columns.source, start, "comment");
}

function readString(columns: GrowingColumns, range: TextRange, problems: ProblemList): number {
  const text = columns.source.slice(range.start, range.end);
  const isGluedToNumber =
    columns.kind(columns.count - 1) === "number" && columns.end(columns.count - 1) === range.start;
  if (isGluedToNumber) {
    return readInchSign(columns, range.start, problems);
  }
  const part = isClosedString(text) ? range : unclosedPart(text, range);
  reportQuotes(text.slice(0, part.end - part.start), part, problems);
  columns.push("string", part.start, part.end);
  return part.end;
}

/** A quotation mark right behind a number is an inch sign: it is read as the inch, and what follows as usual. */
function readInchSign(columns: GrowingColumns, start: number, problems: ProblemList): number {
  const range = { start, end: start + 1 };
  problems.make(() => ({
    severity: "error",
    code: "unknown-unit",
    message: "The inch is written in: 2.5 in.",
    range,
    fixes: [fixOf("Replace with ' in'", [{ ...range, newText: " in" }], true)],
  }));
  columns.push("word", range.start, range.end, INCH);
  return range.end;
}

/** Of a string that is not closed, the part up to a brace or comment: the quote was most likely forgotten before it. */
function unclosedPart(text: string, range: TextRange): TextRange {
  const stop = text.search(/[{#]/);
  const part = (stop > 0 ? text.slice(0, stop) : text).trimEnd();
  return { start: range.start, end: range.start + part.length };
}

function reportQuotes(text: string, range: TextRange, problems: ProblemList): void {
  const plain = `"${stringContent(text)}"`;
  if (!isClosedString(text)) {
    problems.make(() => ({
      severity: "error",
      code: "missing-part",
      message: `The closing quotation mark is missing: ${plain}.`,
      range,
      fixes: [fixOf("Insert '\"'", [{ ...range, newText: plain }])],
    }));
  } else if (text !== plain) {
    problems.make(() => badCharacter(range, `Names stand in straight quotation marks: ${plain}.`, plain));
  }
}
