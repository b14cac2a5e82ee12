/** Help, snippets and forms of the blocks and their settings, made from the tables of the blocks. */
import type { BlockTable, Field, SettingRow } from "../language/blocks/block-table.ts";
import { BLOCKS } from "../language/blocks/blocks.ts";
import { NUMBER } from "../language/dimension.ts";
import type { BlockWord } from "../language/vocabulary.ts";
import { AT_SPEED, type Form, LIMIT, optional, type Part, part, RELATION, value } from "./form.ts";
import type { Snippet, StatementHelp } from "./statement-help.ts";

/** What `STATEMENT_HELP` has of the blocks. */
export const BLOCK_HELP = ofBlocks<StatementHelp>((word, { summary, example, template }) => ({
  summary,
  example,
  snippets: [{ label: word, template }],
}));

/** What `STATEMENT_FORMS` has of the blocks. */
export const BLOCK_FORMS = ofBlocks<readonly Form[]>((word, { settings, limitExample }) => {
  const words = settings.map((row) => row.word).join(", ");
  const limits = limitExample === null ? "" : `, and limits such as ${limitExample}`;
  return [
    { keyword: word, parts: [part("", { kind: "path" }, "{ settings }", `Here stand ${words}${limits}.`)] },
  ];
});

function ofBlocks<T>(of: (word: BlockWord, table: BlockTable) => T): Readonly<Record<BlockWord, T>> {
  const words = Object.keys(BLOCKS) as BlockWord[];
  return Object.fromEntries(words.map((word) => [word, of(word, BLOCKS[word])])) as Record<BlockWord, T>;
}

/** How a setting is written; what is optional may stand in any order, and is shown in that of the table. */
export function settingForm({ word, fields }: SettingRow): Form {
  return { keyword: word, parts: fields.map(fieldPart) };
}

/** How a limit in a block is written, from behind its figure. */
export function blockLimitForm(figure: string, takesSpeed: boolean): Form {
  return { keyword: figure, parts: [...(takesSpeed ? [AT_SPEED] : []), RELATION, LIMIT] };
}

/** A setting with its parts to fill in, the optional ones left out. */
export function settingSnippet({ word, fields }: SettingRow): Snippet {
  const parts = fields.filter(({ isOptional }) => !isOptional).map(fieldTemplate);
  return { label: word, template: [word, ...parts].join(" ") };
}

function fieldPart(field: Field): Part {
  const lead = field.lead ?? "";
  const shown = [lead, shownOf(field)].filter((text) => text !== "").join(" ");
  const taking = takingOf(field);
  return field.isOptional
    ? optional(lead, taking, `[${shown}]`, field.about)
    : part(lead, taking, shown, field.about);
}

function takingOf(field: Field): Part["takes"] {
  switch (field.takes) {
    case "quantity":
      return value(field.dimension, field.example);
    case "count":
      return value(NUMBER, field.example);
    case "text":
      return { kind: "text" };
    case "choice":
      return { kind: "words", words: field.words };
    case "flag":
      return null;
  }
}

function shownOf(field: Field): string {
  switch (field.takes) {
    case "quantity":
      return field.name;
    case "count":
      return "n";
    case "text":
      return `"${field.name}"`;
    case "choice":
      return field.words.join("|");
    case "flag":
      return "";
  }
}

function fieldTemplate(field: Field): string {
  const lead = field.lead === null ? "" : `${field.lead} `;
  switch (field.takes) {
    case "quantity":
    case "count":
      return `${lead}‹${field.example}›`;
    case "text":
      return `${lead}"‹${field.example}›"`;
    case "choice":
      return `${lead}‹${field.words.join("|")}›`;
    case "flag":
      return field.lead;
  }
}
