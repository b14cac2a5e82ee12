/** How far an expression reaches in a row of tokens, and what may stand next in one that the cursor breaks off. */
import { NUMBER } from "../language/dimension.ts";
import { functionRule } from "../language/functions.ts";
import { FUNCTIONS, KEYWORDS, UNITS } from "../language/parse/word-sets.ts";
import type { Dimension } from "../language/quantity.ts";
import type { PlaceToken } from "./cursor-place.ts";

/** The innermost call that is open at the cursor; `argument` counts from 0. */
export interface OpenCall {
  readonly name: string;
  readonly argument: number;
}

/** How an expression stands where the tokens end. */
export interface ValueEnd {
  /** A value is missing; a number stands there, which may take a unit; or a whole value. */
  readonly state: "operand" | "number" | "value";
  /** The kind that fits here; null where any may. */
  readonly expected: Dimension | null;
  readonly call: OpenCall | null;
  /** True inside parentheses. */
  readonly isOpen: boolean;
  /** The unit so far, such as `kg/`, where another factor may follow. */
  readonly unitBefore: string;
}

export interface ValueScan {
  /** The first token behind the expression. */
  readonly next: number;
  /** How the expression stands, if the tokens end in it or right behind it. */
  readonly end: ValueEnd | null;
}

interface Frame {
  readonly call: string | null;
  readonly expected: Dimension | null;
  argument: number;
  /** True while it holds numbers alone: a unit may then stand behind its parenthesis. */
  isBare: boolean;
}

/** The names that are values, and the words of the block around the expression, which are none. */
export interface ScanWords {
  readonly letNames: ReadonlySet<string>;
  readonly blockWords: ReadonlySet<string>;
}

/**
 * Scans the expression that starts at token `start`; null where none can.
 * @param dimension the kind that the place needs; null for any
 */
export function scanValue(
  tokens: readonly PlaceToken[],
  start: number,
  dimension: Dimension | null,
  { letNames, blockWords }: ScanWords,
): ValueScan | null {
  const isEnd = (word: string) => (KEYWORDS.has(word) || blockWords.has(word)) && !letNames.has(word);
  return new Scan(tokens, start, dimension, isEnd).run();
}

class Scan {
  readonly #tokens: readonly PlaceToken[];
  readonly #endsAt: (word: string) => boolean;
  readonly #frames: Frame[];
  #index: number;
  #state: ValueEnd["state"] = "operand";
  /** The kind that the next operand is expected to be of. */
  #expected: Dimension | null;
  #unit = "";

  constructor(
    tokens: readonly PlaceToken[],
    start: number,
    dimension: Dimension | null,
    endsAt: (word: string) => boolean,
  ) {
    this.#tokens = tokens;
    this.#index = start;
    this.#endsAt = endsAt;
    this.#expected = dimension;
    this.#frames = [{ call: null, expected: dimension, argument: 0, isBare: true }];
  }

  run(): ValueScan | null {
    while (this.#index < this.#tokens.length) {
      const isTaken = this.#state === "operand" ? this.#takeOperand() : this.#takeBehind();
      if (isTaken) continue;
      const isOver = this.#state !== "operand" && this.#frames.length === 1;
      return isOver ? { next: this.#index, end: null } : null;
    }
    return { next: this.#index, end: this.#end() };
  }

  #end(): ValueEnd {
    return {
      state: this.#state,
      expected: this.#expected,
      call: this.#innermostCall(),
      isOpen: this.#frames.length > 1,
      unitBefore: this.#unit,
    };
  }

  /** Parentheses inside a call belong to its argument. */
  #innermostCall(): OpenCall | null {
    const calls = this.#frames.flatMap(({ call, argument }) =>
      call === null ? [] : [{ name: call, argument }],
    );
    return calls.at(-1) ?? null;
  }

  get #frame(): Frame | undefined {
    return this.#frames.at(-1);
  }

  #takeOperand(): boolean {
    const token = this.#tokens[this.#index];
    switch (token?.kind) {
      case "number":
        return this.#step("number");
      case "grade":
        return this.#step("value");
      case "word":
        return this.#takeWord(token.text);
      case "+":
      case "-":
        return this.#step("operand");
      case "(":
        return this.#open(null);
      case ")":
        return this.#close();
      default:
        return false;
    }
  }

  #takeWord(word: string): boolean {
    if (FUNCTIONS.has(word) && this.#tokens[this.#index + 1]?.kind === "(") {
      this.#index += 1;
      return this.#open(word);
    }
    if (this.#endsAt(word)) return false;
    this.#markNotBare();
    return this.#step("value");
  }

  #takeBehind(): boolean {
    const token = this.#tokens[this.#index];
    switch (token?.kind) {
      case "word":
        return this.#state === "number" && UNITS.has(token.text) && this.#takeUnit();
      case "+":
      case "-":
        return this.#expect(this.#frame?.expected ?? null);
      case "*":
      case "/":
        return this.#expect(null);
      case "^":
        return this.#expect(NUMBER);
      case ")":
        return this.#close();
      case ",":
        return this.#takeComma();
      default:
        return false;
    }
  }

  /** `kg/m^3`: factors as long as a unit follows; `kg/` at the end is a unit that is being typed. */
  #takeUnit(): boolean {
    let unit = this.#take();
    for (let next = this.#text(0); next === "*" || next === "/" || next === "^"; next = this.#text(0)) {
      const behind = this.#tokens[this.#index + 1];
      const isPart =
        next === "^" ? behind?.kind === "number" : behind !== undefined && UNITS.has(behind.text);
      if (behind === undefined && next !== "^") this.#unit = unit + next;
      if (!isPart) break;
      unit += this.#take() + this.#take();
    }
    this.#markNotBare();
    this.#state = "value";
    return true;
  }

  #markNotBare(): void {
    const frame = this.#frame;
    if (frame !== undefined) frame.isBare = false;
  }

  #take(): string {
    const text = this.#text(0);
    this.#index += 1;
    return text;
  }

  #text(ahead: number): string {
    return this.#tokens[this.#index + ahead]?.text ?? "";
  }

  #step(state: ValueEnd["state"]): true {
    this.#index += 1;
    this.#state = state;
    this.#unit = "";
    return true;
  }

  /** Steps over an operator. */
  #expect(expected: Dimension | null): true {
    this.#index += 1;
    this.#state = "operand";
    this.#expected = expected;
    return true;
  }

  #open(call: string | null): true {
    const expected = call === null ? this.#expected : argumentKind(call, this.#expected);
    this.#frames.push({ call, expected, argument: 0, isBare: call === null });
    this.#expected = expected;
    return this.#step("operand");
  }

  #close(): boolean {
    if (this.#frames.length === 1) return false;
    const isBare = this.#frames.pop()?.isBare ?? false;
    if (!isBare) this.#markNotBare();
    this.#expected = this.#frame?.expected ?? null;
    return this.#step(isBare ? "number" : "value");
  }

  #takeComma(): boolean {
    const frame = this.#frame;
    if (frame === undefined || frame.call === null) return false;
    frame.argument += 1;
    return this.#expect(frame.expected);
  }
}

/** The kind that a function's arguments are of, where its result is to be of a kind. */
function argumentKind(name: string, result: Dimension | null): Dimension | null {
  const takes = functionRule(name)?.takes;
  if (typeof takes === "object") return takes;
  return name === "atan2" || name === "sqrt" ? null : result;
}
