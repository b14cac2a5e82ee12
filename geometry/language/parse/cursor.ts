import { nearestWord } from "../nearest-word.ts";
import type { Fix, Problem } from "../problem.ts";
import type { ProblemCode } from "../problem-codes.ts";
import type { TextRange } from "../text.ts";
import { deleteFix } from "./fixes.ts";
import { createProblemList } from "./problem-list.ts";
import type { SymbolKind, SyntaxKind, TokenColumns } from "./token-columns.ts";
import type { TokenTable } from "./token-table.ts";
import { KEYWORDS } from "./word-sets.ts";

/** How deep expressions may nest; deep enough for people, shallow enough for every recursion over the tree. */
const MOST_LEVELS = 200;
/** Operators in one expression: `1 + 1 + 1 …` nests to the left. */
const MOST_OPERATORS = 1000;

/** Tokens that a look ahead may pass; keeps reading linear where every token of an endless line looks ahead. */
export const FARTHEST_LOOK = 200;

/** The problems that one misplaced or missing part may cause several of. */
const STRUCTURAL: ReadonlySet<ProblemCode> = new Set(["unexpected-text", "missing-part", "missing-brace"]);

const NO_WORDS: ReadonlySet<string> = new Set();

/**
 * A place in the token table. After `fail` the cursor is in panic: every `at…` answers false, so that the rules fall
 * through to the one that recovers, and no further problem is reported for the same mistake.
 */
export class Cursor {
  readonly table: TokenTable;
  readonly #tokens: TokenColumns;
  /** Deeper than zero inside a point's or a call's parentheses, where a comma separates. */
  listDepth = 0;
  /** The words that mean something in the block around the cursor, beside those of the language; empty outside of one. */
  blockWords: ReadonlySet<string> = NO_WORDS;
  #index = 0;
  #panicking = false;
  /** A character without meaning was left out on this line: what follows is most likely its fault. */
  #tainted: boolean;
  /** What was missing has been guessed: what does not fit behind it is most likely the same mistake. */
  #guessing = false;
  #lastReported = -1;
  #levels = 0;
  #operators = 0;
  #problems = createProblemList();
  #skipped: TextRange[] = [];
  #namePlaces: ReadonlyMap<string, readonly number[]> | null = null;

  constructor(table: TokenTable) {
    this.table = table;
    this.#tokens = table.tokens;
    this.#tainted = table.tokens.isTainted(-1);
  }

  get index(): number {
    return this.#index;
  }
  get problems(): readonly Problem[] {
    return this.#problems.found;
  }
  /** Text that no node covers because it was not understood. */
  get skipped(): readonly TextRange[] {
    return this.#skipped;
  }
  get panicking(): boolean {
    return this.#panicking;
  }

  /** True where a mistake of this item was guessed at: what follows on it is most likely the same mistake. */
  get guessing(): boolean {
    return this.#guessing;
  }

  // Looking ------------------------------------------------------------------------------------------------------

  /** The kind of the token `ahead` tokens on, panic or not. */
  kind(ahead = 0): SyntaxKind {
    return this.#tokens.kind(this.#index + ahead);
  }
  /** The meaning of the token `ahead` tokens on; empty at the end of the text. */
  text(ahead = 0): string {
    return this.#tokens.text(this.#index + ahead);
  }
  range(ahead = 0): TextRange {
    const index = this.#index + ahead;
    return { start: this.#tokens.start(index), end: this.#tokens.end(index) };
  }
  /** How far ahead (behind, where negative) the words stand that are the name of this let; null for more than `most`. */
  placesOf(letName: string, most: number): readonly number[] | null {
    this.#namePlaces ??= findNamePlaces(this.table);
    const places = this.#namePlaces.get(letName) ?? [];
    return places.length > most ? null : places.map((index) => index - this.#index);
  }
  isWord(word: string, ahead = 0): boolean {
    // Where a token means something else than its text, that text is no word of the language.
    return this.kind(ahead) === "word" && this.#tokens.isSpelt(this.#index + ahead, word);
  }
  /** True for a word of the language, or of the block around the cursor. */
  isKeyword(word: string): boolean {
    return KEYWORDS.has(word) || this.blockWords.has(word);
  }
  isSymbol(symbol: SymbolKind, ahead = 0): boolean {
    return this.kind(ahead) === symbol;
  }
  /** True at a line's end and at the end of the text. */
  isLineEnd(): boolean {
    return this.kind() === "newline" || this.kind() === "end";
  }
  at(kind: SyntaxKind): boolean {
    return !this.#panicking && this.kind() === kind;
  }
  atWord(word: string): boolean {
    return !this.#panicking && this.isWord(word);
  }
  atSymbol(symbol: SymbolKind): boolean {
    return !this.#panicking && this.isSymbol(symbol);
  }

  // Moving -------------------------------------------------------------------------------------------------------

  /** Steps over a token and returns its range. */
  take(): TextRange {
    const range = this.range();
    this.#advance();
    return range;
  }
  #advance(): void {
    const kind = this.kind();
    if (kind === "newline") {
      this.#tainted = false;
      this.#guessing = false;
    }
    this.#tainted ||= this.#tokens.isTainted(this.#index);
    if (kind !== "end") {
      this.#index += 1;
    }
  }
  takeWord(word: string): boolean {
    if (!this.atWord(word)) {
      return false;
    }
    this.take();
    return true;
  }
  takeSymbol(symbol: SymbolKind): boolean {
    if (!this.atSymbol(symbol)) {
      return false;
    }
    this.take();
    return true;
  }
  skipNewlines(): void {
    while (this.kind() === "newline") {
      this.take();
    }
  }
  /** Where the last token taken ends, line ends not counted. */
  get previousEnd(): number {
    const last = this.kind(-1) === "newline" ? this.#index - 2 : this.#index - 1;
    return last < 0 ? 0 : this.#tokens.end(last);
  }
  /** True where the last token taken is a line end. */
  get startsLine(): boolean {
    return this.kind(-1) === "newline";
  }
  /** From `start` to the last token taken. */
  rangeFrom(start: number): TextRange {
    return { start, end: Math.max(start, this.previousEnd) };
  }
  /** From this token to the last one of its line, or as far as the cursor looks ahead. */
  restOfLine(): TextRange {
    let last = 0;
    while (last < FARTHEST_LOOK && !this.endsLine(last + 1)) {
      last += 1;
    }
    return { start: this.range().start, end: this.range(last).end };
  }
  endsLine(ahead: number): boolean {
    const kind = this.kind(ahead);
    return kind === "newline" || kind === "end" || this.isSymbol("}", ahead);
  }

  // Reporting ----------------------------------------------------------------------------------------------------

  /** Reports a problem from which reading goes on as if it were mended. */
  note(code: ProblemCode, message: string, range: TextRange, fixes: readonly Fix[] = []): void {
    const isSameMistake = this.#tainted || (this.#guessing && STRUCTURAL.has(code));
    if (this.#panicking || isSameMistake || range.start === this.#lastReported) {
      return;
    }
    this.#lastReported = range.start;
    this.#problems.make(() => ({ severity: "error", code, message, range, fixes }));
  }
  /**
   * Reports a problem and goes on with a guess at what was meant. That something is out of place further on in the
   * statement or step is then not reported.
   */
  guess(code: ProblemCode, message: string, range: TextRange, fixes: readonly Fix[] = []): void {
    this.note(code, message, range, fixes);
    this.#guessing = true;
  }
  /** Reports a problem after which nothing sensible can be read before a safe place. */
  fail(code: ProblemCode, message: string, range: TextRange, fixes: readonly Fix[] = []): null {
    this.note(code, message, range, fixes);
    this.#panicking = true;
    return null;
  }
  /** Where something is missing: the token that stands there instead, or the place behind the last token of the line. */
  missingRange(): TextRange {
    const isNothingThere = this.isLineEnd() || this.isSymbol("}") || this.isSymbol(")") || this.isSymbol("{");
    return isNothingThere ? { start: this.previousEnd, end: this.previousEnd } : this.range();
  }

  /** The fix that removes a range; none where nobody would see it. */
  removal(range: TextRange, safe = false): readonly Fix[] {
    return this.isFull || this.#panicking ? [] : [deleteFix(this.table.source, range, safe)];
  }
  /**
   * The candidate that a word was meant to be. Once the list of problems is full nobody would see the suggestion, and
   * looking for one is the slowest thing the parser does.
   */
  suggest(word: string, candidates: Iterable<string>): string | null {
    return this.isFull ? null : nearestWord(word, candidates);
  }
  get isFull(): boolean {
    return this.#problems.isFull;
  }

  // Recovering ---------------------------------------------------------------------------------------------------

  /**
   * Skips to the end of the line, to a `}`, or to a token where `isSafe` holds, and ends the panic. A whole block that
   * starts on the way is skipped with it.
   */
  recover(isSafe: () => boolean = () => false): void {
    const { start } = this.range();
    const from = this.#index;
    while (!this.endsLine(0) && !isSafe()) {
      this.#skipToken();
    }
    if (this.#index > from) {
      this.#skipped.push(this.rangeFrom(start));
    }
    this.calm();
  }
  /** Skips to a `{` on this line, or to its end. */
  skipToBrace(): void {
    const { start } = this.range();
    const from = this.#index;
    while (!this.endsLine(0) && !this.isSymbol("{")) {
      this.#advance();
    }
    if (this.#index > from) {
      this.#skipped.push(this.rangeFrom(start));
    }
  }
  /** Steps over tokens that were not understood. */
  skipAhead(count: number): void {
    const { start } = this.range();
    for (let i = 0; i < count; i += 1) {
      this.#advance();
    }
    this.#skipped.push(this.rangeFrom(start));
  }
  /** Ends panic and guessing at a place where something new starts. */
  calm(): void {
    this.#panicking = false;
    this.#guessing = false;
  }
  #skipToken(): void {
    const closer = this.isSymbol("{") ? this.table.closers.get(this.#index) : undefined;
    this.#index = closer ?? this.#index;
    this.#advance();
  }

  // Limits -------------------------------------------------------------------------------------------------------

  /** Runs a rule one level deeper, or refuses where the text nests too deep. */
  nested<T>(rule: () => T | null): T | null {
    if (this.#levels >= MOST_LEVELS) {
      const message = `This is nested deeper than ${MOST_LEVELS} levels; use a let for a part of it.`;
      return this.fail("too-deep", message, this.range());
    }
    this.#levels += 1;
    const result = rule();
    this.#levels -= 1;
    return result;
  }
  /** Counts an operator of the expression; false where there are too many. */
  countOperator(): boolean {
    this.#operators += 1;
    if (this.#operators <= MOST_OPERATORS) {
      return true;
    }
    const message = `One expression has more than ${MOST_OPERATORS} operators; use a let for a part of it.`;
    this.fail("too-deep", message, this.range());
    return false;
  }
  /** To be called where a new expression starts that is not part of another. */
  startExpression(): void {
    if (this.#levels === 0) {
      this.#operators = 0;
    }
  }
}

/** Where the names of lets stand as words, by index in the table. */
function findNamePlaces(table: TokenTable): ReadonlyMap<string, readonly number[]> {
  const places = new Map<string, number[]>(Array.from(table.letNames, (name) => [name, []]));
  for (let i = 0; i < table.tokens.count; i += 1) {
    if (table.tokens.kind(i) === "word") {
      places.get(table.tokens.text(i))?.push(i);
    }
  }
  return places;
}
