/** Follows a form of a statement or step through the tokens before the cursor, to what may come next. */
import { ANGLE, isNumber, LENGTH } from "../language/dimension.ts";
import type { Dimension } from "../language/quantity.ts";
import type { CursorPlace, PlaceToken } from "./cursor-place.ts";
import type { Form, Part, Taking } from "./form.ts";
import { type OpenCall, scanValue, type ValueEnd } from "./scan-value.ts";

/** What may stand at the cursor. */
export type Expected =
  /** The rest of the words before a part, as alternatives. */
  | { readonly kind: "lead"; readonly leads: readonly (readonly string[])[]; readonly part: Part }
  /** The start of what a part takes. */
  | { readonly kind: "start"; readonly taking: Taking; readonly part: Part }
  /** The parentheses behind `by`. */
  | { readonly kind: "offset" }
  /** Something inside or behind an expression. */
  | { readonly kind: "value"; readonly end: ValueEnd };

export interface FormMatch {
  readonly form: Form;
  readonly expected: readonly Expected[];
  /** The index of the part that the cursor is at; −1 behind the last one. */
  readonly active: number;
  /** True where nothing more is needed. */
  readonly isComplete: boolean;
  readonly call: OpenCall | null;
}

/** What a place knows that the form does not. */
export interface MatchContext {
  readonly place: CursorPlace;
  /** The kind of value that a part takes; null for any. */
  dimensionOf(taking: Taking): Dimension | null;
  /** Whether a figure of this name needs a closing speed. */
  figureTakesSpeed(name: string): boolean;
}

/** Follows a form from behind its keyword; null where the tokens do not fit it. */
export function matchForm(form: Form, context: MatchContext): FormMatch | null {
  const tokens = context.place.item;
  const expected: Expected[] = [];
  let index = 1;
  let open: OpenPart | null = null;
  for (const [number, part] of form.parts.entries()) {
    if (index === tokens.length) {
      expected.push(startOf(part));
      open = open === null ? { number, isLeft: false, call: null } : nextPart(open, number, context);
      if (part.isOptional) continue;
      return { form, expected, active: open.number, isComplete: false, call: open.call };
    }
    const found = matchPart(part, tokens, index, context);
    if (found === null) {
      if (part.isOptional) continue;
      return null;
    }
    index = found.next;
    expected.push(...found.expected);
    if (!found.isWhole) return { form, expected, active: number, isComplete: false, call: found.call };
    if (found.expected.length > 0) open = { number, isLeft: found.isLeft, call: found.call };
  }
  if (index < tokens.length) return null;
  return { form, expected, active: open?.number ?? -1, isComplete: true, call: open?.call ?? null };
}

/** The part that the cursor is at: one that the tokens end in, or the one that comes next. */
interface OpenPart {
  readonly number: number;
  /** True where the cursor has left it: a blank, and nothing more that could belong to it. */
  readonly isLeft: boolean;
  readonly call: OpenCall | null;
}

function nextPart(open: OpenPart, number: number, { place }: MatchContext): OpenPart {
  const last = place.item.at(-1);
  const hasGap = last !== undefined && last.end < place.typed.start;
  // Once the next part is the one, the optional parts behind it wait.
  return open.isLeft && hasGap && open.call === null ? { number, isLeft: false, call: null } : open;
}

interface PartMatch {
  readonly next: number;
  readonly expected: readonly Expected[];
  readonly isWhole: boolean;
  readonly isLeft: boolean;
  readonly call: OpenCall | null;
}

function whole(next: number): PartMatch {
  return { next, expected: [], isWhole: true, isLeft: true, call: null };
}

function broken(next: number, expected: readonly Expected[], call: OpenCall | null = null): PartMatch {
  return { next, expected, isWhole: false, isLeft: false, call };
}

function startOf(part: Part): Expected {
  if (part.leads.length > 0 || part.takes === null) return { kind: "lead", leads: part.leads, part };
  return { kind: "start", taking: part.takes, part };
}

function matchPart(
  part: Part,
  tokens: readonly PlaceToken[],
  start: number,
  context: MatchContext,
): PartMatch | null {
  const { leads, takes } = part;
  const matching = leads.filter((words) => isLeadAt(words, tokens, start));
  if (leads.length > 0 && matching.length === 0) return null;
  const words = matching[0] ?? [];
  const behind = start + words.length;
  if (behind > tokens.length) {
    const rest = matching.map((lead) => lead.slice(tokens.length - start));
    return broken(tokens.length, [{ kind: "lead", leads: rest, part }]);
  }
  if (takes === null) return whole(behind);
  if (behind === tokens.length) return broken(behind, [{ kind: "start", taking: takes, part }]);
  return matchTaking(takes, tokens, behind, context);
}

/** True where the tokens are these words, as far as there are tokens. */
function isLeadAt(words: readonly string[], tokens: readonly PlaceToken[], start: number): boolean {
  return words.every((word, i) => {
    const token = tokens[start + i];
    return token === undefined || (isWordLike(token) && token.text === word);
  });
}

/** A comma leads a second name in, as a word would, and a list may stand in parentheses. */
function isWordLike({ kind, text }: PlaceToken): boolean {
  return kind === "word" || text === "," || text === "(" || text === ")";
}

function matchTaking(
  taking: Taking,
  tokens: readonly PlaceToken[],
  start: number,
  context: MatchContext,
): PartMatch | null {
  const token = tokens[start];
  if (token === undefined) return null;
  switch (taking.kind) {
    case "value":
    case "override":
    case "limit":
      return matchValue(tokens, start, context.dimensionOf(taking), context);
    case "point":
      return matchPoint(tokens, start, context);
    case "words":
      return token.kind === "word" && taking.words.includes(token.text) ? whole(start + 1) : null;
    case "figure":
      if (token.kind !== "word" || context.figureTakesSpeed(token.text) !== taking.takesSpeed) return null;
      return whole(start + 1);
    case "text":
      return token.kind === "string" ? whole(start + 1) : null;
    case "new-name":
    case "let-name":
    case "material":
      return token.kind === "word" ? whole(start + 1) : null;
    case "relation":
      return token.text === "<=" || token.text === ">=" ? whole(start + 1) : null;
    case "equals":
      return token.text === "=" ? whole(start + 1) : null;
    case "path":
    case "overrides":
      return null;
  }
}

function matchValue(
  tokens: readonly PlaceToken[],
  start: number,
  dimension: Dimension | null,
  { place }: MatchContext,
): PartMatch | null {
  const scan = scanValue(tokens, start, dimension, place);
  if (scan === null) return null;
  const { next, end } = scan;
  if (end === null) return whole(next);
  const expected: readonly Expected[] = [{ kind: "value", end }];
  if (end.state === "operand" || end.isOpen) return broken(next, expected, end.call);
  // Behind a number its unit is still to come, unless it is to be a plain one.
  const isLeft = end.state === "value" || (dimension !== null && isNumber(dimension));
  return { next, expected, isWhole: true, isLeft, call: end.call };
}

/** `(x, y)`, `(r @ angle)` or `by (dx, dy)`. */
function matchPoint(tokens: readonly PlaceToken[], start: number, context: MatchContext): PartMatch | null {
  const isRelative = tokens[start]?.kind === "word" && tokens[start]?.text === "by";
  const open = isRelative ? start + 1 : start;
  if (open === tokens.length) return broken(open, [{ kind: "offset" }]);
  if (tokens[open]?.text !== "(") return null;
  const first = matchCoordinate(tokens, open + 1, LENGTH, context);
  if (first === null || !first.isWhole || first.next === tokens.length) return first && unfinished(first);
  const separator = tokens[first.next]?.text;
  if (separator !== "," && separator !== "@") return null;
  const second = matchCoordinate(tokens, first.next + 1, separator === "@" ? ANGLE : LENGTH, context);
  if (second === null || !second.isWhole || second.next === tokens.length)
    return second && unfinished(second);
  return tokens[second.next]?.text === ")" ? whole(second.next + 1) : null;
}

function matchCoordinate(
  tokens: readonly PlaceToken[],
  start: number,
  dimension: Dimension,
  context: MatchContext,
): PartMatch | null {
  if (start < tokens.length) return matchValue(tokens, start, dimension, context);
  const end: ValueEnd = { state: "operand", expected: dimension, call: null, isOpen: true, unitBefore: "" };
  return broken(start, [{ kind: "value", end }]);
}

/** Of a point the tokens end in: its parenthesis is still open. */
function unfinished({ next, expected, call }: PartMatch): PartMatch {
  return broken(next, expected, call);
}
