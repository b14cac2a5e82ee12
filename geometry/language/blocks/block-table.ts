/**
 * What a block such as `budget { limit 6 kg … }` is made of. A block is one table of this kind: the parser, the
 * evaluation, completion, hovers, parameter help and the colours are made from it.
 */
import type { Dimension } from "../quantity.ts";

export interface BlockTable {
  /** One sentence, as a reader of the file would ask for it. */
  readonly summary: string;
  /** A whole block on one line. */
  readonly example: string;
  /** What completion inserts, with places to fill in: `‹6 kg›`. Begins with the word of the block. */
  readonly template: string;
  readonly settings: readonly SettingRow[];
  /** How a limit on a figure is written in it, such as `mass <= 1.5 kg`; null where none may stand there. */
  readonly limitExample: string | null;
}

/** One setting: its word and what stands behind it. */
export interface SettingRow {
  readonly word: string;
  /** One sentence. */
  readonly summary: string;
  /** A line of a block that uses it. */
  readonly example: string;
  /** Those that have to be there first and in this order; the optional ones behind them may stand in any order. */
  readonly fields: readonly Field[];
  /** True where it may stand more than once. */
  readonly isRepeated?: true;
}

export type Field = QuantityField | CountField | TextField | ChoiceField | FlagField;

interface FieldOf<Takes extends string> {
  readonly takes: Takes;
  /** What the evaluation finds its value by. */
  readonly name: string;
  /** The word before it; null where it stands by itself. What is optional has one. */
  readonly lead: string | null;
  readonly isOptional?: true;
  /** One sentence for parameter help and hovers. */
  readonly about: string;
}

/** A value with a unit, or a plain number where the dimension is that of one. */
export interface QuantityField extends FieldOf<"quantity"> {
  readonly dimension: Dimension;
  /** What the value comes out in, and what messages give the limits in; empty for a plain number. */
  readonly unit: string;
  readonly example: string;
  /** Begins the messages about it: "The mass of a part". */
  readonly what: string;
  readonly range: FieldRange;
}

/** In the field's unit. */
export interface FieldRange {
  readonly least: number;
  /** True where the value has to be more than `least`. */
  readonly above?: true;
  readonly most: number;
  /** Why less, or more, cannot be: whole sentences behind the message. */
  readonly whyNotLess?: string;
  readonly whyNotMore?: string;
}

/** A whole number. */
export interface CountField extends FieldOf<"count"> {
  readonly example: string;
  readonly what: string;
  readonly least: number;
  readonly most: number;
}

/** A name in quotation marks; the example stands without them. */
export interface TextField extends FieldOf<"text"> {
  readonly example: string;
}

/** One of some words. */
export interface ChoiceField extends FieldOf<"choice"> {
  readonly words: readonly string[];
}

/** A word that is there or not. */
export interface FlagField extends FieldOf<"flag"> {
  readonly lead: string;
  readonly isOptional: true;
}

/** The setting of that word. */
export function rowOf({ settings }: BlockTable, word: string): SettingRow | null {
  return settings.find((row) => row.word === word) ?? null;
}

/** The words before the parts of a setting and those to choose from. */
export function optionWordsOf({ fields }: SettingRow): readonly string[] {
  return fields.flatMap((field) => [
    ...(field.lead === null ? [] : [field.lead]),
    ...(field.takes === "choice" ? field.words : []),
  ]);
}

/** All words that mean something in a block. */
export function wordsOf({ settings }: BlockTable): ReadonlySet<string> {
  return new Set(settings.flatMap((row) => [row.word, ...optionWordsOf(row)]));
}
