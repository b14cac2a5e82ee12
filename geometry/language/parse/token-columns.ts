import { MEANING_TEXTS } from "./plain-tokens.ts";

/**
 * The tokens that matter to the parser, in columns instead of objects, because a file may have millions of them. Blanks
 * and comments are left out, typographic characters are read as meant.
 */

/** A symbol is its own kind, so that the parser can ask for it without cutting text. */
export type SymbolKind =
  | "("
  | ")"
  | "{"
  | "}"
  | ","
  | "@"
  | "="
  | "+"
  | "-"
  | "*"
  | "/"
  | "^"
  | "<"
  | ">"
  | "<="
  | ">=";
/** Tokens of a usual file; longer ones make the columns grow. */
const FIRST_SIZE = 1024;

export type SyntaxKind = "word" | "number" | "grade" | "string" | "newline" | "end" | SymbolKind;

const KINDS: readonly SyntaxKind[] = [
  "end",
  "newline",
  "word",
  "number",
  "grade",
  "string",
  "(",
  ")",
  "{",
  "}",
  ",",
  "@",
  "=",
  "+",
  "-",
  "*",
  "/",
  "^",
  "<",
  ">",
  "<=",
  ">=",
];
const CODES: ReadonlyMap<SyntaxKind, number> = new Map(KINDS.map((kind, code) => [kind, code]));

/** Everything that a token may mean other than its text; the first stands for its text. Fewer than 256. */
const MEANINGS: readonly (string | null)[] = [null, ...MEANING_TEXTS];
const MEANING_NUMBERS: ReadonlyMap<string | null, number> = new Map(
  MEANINGS.map((meaning, number) => [meaning, number]),
);

/** Marks, in the code of a kind, that a character without meaning was left out behind the token. */
const TAINT = 128;

/** The tokens of a text; the last one is `end`. */
export interface TokenColumns {
  readonly source: string;
  readonly count: number;
  /** The kind of the token at `index`; `end` for every index outside. */
  kind(index: number): SyntaxKind;
  start(index: number): number;
  end(index: number): number;
  /** What the token at `index` means, which is not always what stands in the source; empty at the end. */
  text(index: number): string;
  /** True where the token stands in the source just as `text`. */
  isSpelt(index: number, text: string): boolean;
  /** True where a character without meaning was left out right behind the token; -1 is the start of the text. */
  isTainted(index: number): boolean;
}

/** Columns to be filled: typed arrays that double when they are full. */
export class GrowingColumns implements TokenColumns {
  readonly source: string;
  #count = 0;
  #codes = new Uint8Array(FIRST_SIZE);
  #starts = new Int32Array(FIRST_SIZE);
  #ends = new Int32Array(FIRST_SIZE);
  /** Numbers of meanings; 0 where a token means what stands there. */
  #meant = new Uint8Array(FIRST_SIZE);
  #isStartTainted = false;

  constructor(source: string) {
    this.source = source;
  }

  get count(): number {
    return this.#count;
  }
  kind(index: number): SyntaxKind {
    return (index < this.#count && KINDS[(this.#codes[index] ?? 0) & ~TAINT]) || "end";
  }
  start(index: number): number {
    return index < this.#count ? (this.#starts[index] ?? 0) : this.source.length;
  }
  end(index: number): number {
    return index < this.#count ? (this.#ends[index] ?? 0) : this.source.length;
  }
  text(index: number): string {
    const meaning = index < this.#count ? MEANINGS[this.#meant[index] ?? 0] : null;
    return meaning ?? this.source.slice(this.start(index), this.end(index));
  }
  isSpelt(index: number, text: string): boolean {
    const start = this.start(index);
    return this.end(index) - start === text.length && this.source.startsWith(text, start);
  }
  isTainted(index: number): boolean {
    return index < 0 ? this.#isStartTainted : index < this.#count && (this.#codes[index] ?? 0) >= TAINT;
  }

  push(kind: SyntaxKind, start: number, end: number, meaning: string | null = null): void {
    this.#write(CODES.get(kind) ?? 0, start, end, MEANING_NUMBERS.get(meaning) ?? 0);
  }
  /** Adds a token of other columns as it is, taint and all. */
  copy(from: GrowingColumns, index: number): void {
    this.#write(from.#codes[index] ?? 0, from.start(index), from.end(index), from.#meant[index] ?? 0);
  }
  /** A character without meaning was left out behind the last token. */
  taint(): void {
    if (this.#count === 0) {
      this.#isStartTainted = true;
    } else {
      this.#codes[this.#count - 1] = (this.#codes[this.#count - 1] ?? 0) | TAINT;
    }
  }
  #write(code: number, start: number, end: number, meant: number): void {
    if (this.#count === this.#codes.length) {
      this.#grow();
    }
    this.#codes[this.#count] = code;
    this.#starts[this.#count] = start;
    this.#ends[this.#count] = end;
    this.#meant[this.#count] = meant;
    this.#count += 1;
  }
  #grow(): void {
    const size = this.#codes.length * 2;
    this.#codes = extended(this.#codes, new Uint8Array(size));
    this.#starts = extended(this.#starts, new Int32Array(size));
    this.#ends = extended(this.#ends, new Int32Array(size));
    this.#meant = extended(this.#meant, new Uint8Array(size));
  }
}

function extended<T extends Uint8Array | Int32Array>(from: T, to: T): T {
  to.set(from);
  return to;
}

const SYMBOLS: Readonly<Record<string, SymbolKind>> = {
  "(": "(",
  ")": ")",
  "{": "{",
  "}": "}",
  ",": ",",
  "@": "@",
  "=": "=",
  "+": "+",
  "-": "-",
  "*": "*",
  "/": "/",
  "^": "^",
  "<": "<",
  ">": ">",
  "<=": "<=",
  ">=": ">=",
};

/** The kind of a symbol token. Any other text would be a mistake of the tokenizer and counts as the end of the text. */
export function symbolKind(text: string): SyntaxKind {
  return SYMBOLS[text] ?? "end";
}
