/** A block evaluated by its table: every value of its kind and within its range, each setting once. */
import type { CountField, Field, QuantityField, SettingRow } from "../../blocks/block-table.ts";
import { type BlockTable, rowOf } from "../../blocks/block-table.ts";
import type { Located, Requirement } from "../../design.ts";
import { isNumber, NUMBER } from "../../dimension.ts";
import type { RequirableFigure } from "../../requirable.ts";
import type { TextRange } from "../../text.ts";
import type { BlockStatement, Expression, SettingItem, SettingPart } from "../../tree.ts";
import { numberOfUnit, unitFromText } from "../../units.ts";
import { writtenUnit } from "../expression-shape.ts";
import { evaluateFigureLimit } from "../requirements.ts";
import { type Limits, type Scope, wholeNumber, within } from "../values.ts";

export interface BlockValues {
  /** In file order; of a setting that may stand but once the first alone. */
  readonly settings: readonly SettingValues[];
  /** Those with a problem are left out. */
  readonly limits: readonly Requirement[];
  /** The word of the block. */
  readonly keyword: TextRange;
  readonly range: TextRange;
}

/** One setting; a part that is not there, or wrong, is in none of the maps. */
export interface SettingValues {
  readonly word: string;
  readonly range: TextRange;
  /** Quantities in the unit of their field, and counts. */
  readonly numbers: ReadonlyMap<string, Located<number>>;
  /** Names and chosen words. */
  readonly texts: ReadonlyMap<string, Located<string>>;
  /** Everything that is said, right or wrong. */
  readonly said: ReadonlySet<string>;
}

export function blockValues(
  scope: Scope,
  table: BlockTable,
  { body, keyword, range }: BlockStatement,
  figures: readonly RequirableFigure[],
): BlockValues {
  const settings = body.flatMap((item) => {
    const row = item.kind === "setting" ? rowOf(table, item.word) : null;
    return item.kind === "setting" && row !== null ? [settingValues(scope, row, item)] : [];
  });
  const isFirst = ({ word }: SettingValues, index: number) =>
    rowOf(table, word)?.isRepeated === true || settings.findIndex((other) => other.word === word) === index;
  const limits = body.flatMap((item) =>
    item.kind === "limit" ? (evaluateFigureLimit(scope, item, figures) ?? []) : [],
  );
  return { settings: settings.filter(isFirst), limits, keyword, range };
}

/** The settings of a word that may stand more than once. */
export function settingsOf({ settings }: BlockValues, word: string): readonly SettingValues[] {
  return settings.filter((setting) => setting.word === word);
}

/** The number of a setting; null where it is not there or wrong. */
export function numberOf(values: BlockValues, word: string, name: string): Located<number> | null {
  return settingsOf(values, word)[0]?.numbers.get(name) ?? null;
}

/** The name or the chosen word of a setting; null where it is not there or wrong. */
export function textOf(values: BlockValues, word: string, name: string): Located<string> | null {
  return settingsOf(values, word)[0]?.texts.get(name) ?? null;
}

/** Those of some settings that are not there; what is there and wrong has a problem of its own. */
export function unsaidOf(values: BlockValues, words: readonly string[]): readonly string[] {
  return words.filter((word) => settingsOf(values, word).length === 0);
}

function settingValues(
  scope: Scope,
  { fields }: SettingRow,
  { word, parts, range }: SettingItem,
): SettingValues {
  const numbers = new Map<string, Located<number>>();
  const texts = new Map<string, Located<string>>();
  for (const part of parts) {
    const field = fields.find(({ name }) => name === part.name);
    const value = field === undefined ? null : numberOfPart(scope, field, part);
    if (value !== null) numbers.set(part.name, value);
    if (part.text !== null)
      texts.set(part.name, { value: part.text.name, range: part.text.range, unit: null });
  }
  return { word, range, numbers, texts, said: new Set(parts.map(({ name }) => name)) };
}

function numberOfPart(scope: Scope, field: Field, { value }: SettingPart): Located<number> | null {
  if (value === null) return null;
  switch (field.takes) {
    case "quantity":
      return quantityOf(scope, field, value);
    case "count":
      return countOf(scope, field, value);
    default:
      return null;
  }
}

function countOf(scope: Scope, { what, least, most }: CountField, value: Expression): Located<number> | null {
  const count = wholeNumber(scope, value, what, least, most);
  return count === null ? null : { value: count, range: value.range, unit: null };
}

function quantityOf(scope: Scope, field: QuantityField, value: Expression): Located<number> | null {
  const { dimension, unit, range, what } = field;
  const scale = isNumber(dimension) ? { factor: 1, dimension: NUMBER } : unitFromText(unit);
  if (scale === null) throw new RangeError(`${field.name}: no unit "${unit}"`);
  const { least, most, above = false, whyNotLess, whyNotMore } = range;
  const limits: Limits = {
    dimension,
    unit,
    least: least * scale.factor,
    above,
    most: most * scale.factor,
    whyNotLess,
    whyNotMore,
  };
  const worth = within(scope, value, what, limits);
  if (worth === null) return null;
  const number = isNumber(dimension) ? worth.value : numberOfUnit(worth, scale);
  return { value: number, range: value.range, unit: writtenUnit(value)?.text ?? null };
}
