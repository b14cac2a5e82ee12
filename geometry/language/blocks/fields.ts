/** Settings of one quantity, as most blocks about the robot have them. */
import type { QuantityField, SettingRow } from "./block-table.ts";

/** `word VALUE`: a setting that is one quantity. Its value is found by the name `value`. */
export function quantityRow(
  word: string,
  summary: string,
  field: Omit<QuantityField, "takes" | "name" | "lead">,
): SettingRow {
  return {
    word,
    summary,
    example: `${word} ${field.example}`,
    fields: [{ takes: "quantity", name: "value", lead: null, ...field }],
  };
}

/** `word first|second`: a setting that is one of some words. Its word is found by the name `value`. */
export function choiceRow(
  word: string,
  summary: string,
  { words, about }: { readonly words: readonly [string, ...string[]]; readonly about: string },
): SettingRow {
  return {
    word,
    summary,
    example: `${word} ${words[0]}`,
    fields: [{ takes: "choice", name: "value", lead: null, words, about }],
  };
}
