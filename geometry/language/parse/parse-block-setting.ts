/** A setting of a block, by its row of the block's table. */
import type { Field, SettingRow, TextField } from "../blocks/block-table.ts";
import { dimensionName } from "../quantity-kinds.ts";
import type { TextRange } from "../text.ts";
import { stringContent } from "../tokenize.ts";
import type { Identifier, SettingItem, SettingPart } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { expectWord, expectWordBefore, takeOption } from "./expect-word.ts";
import { failMissing } from "./fail-missing.ts";
import { fixOf } from "./fixes.ts";
import { parseExpression } from "./parse-expression.ts";
import { skipEquals } from "./parse-setting.ts";

/** Reads a setting from behind its word, which stood at `keyword`. */
export function parseBlockSetting(cursor: Cursor, row: SettingRow, keyword: TextRange): SettingItem {
  const { word, fields } = row;
  skipEquals(cursor, word);
  const needed = fields.filter((field) => !field.isOptional).map((field) => parseNeeded(cursor, field));
  const parts = [...needed, ...parseOptions(cursor, fields)];
  return { kind: "setting", keyword, word, parts, range: cursor.rangeFrom(keyword.start) };
}

function parseNeeded(cursor: Cursor, field: Field): SettingPart {
  if (field.lead === null) {
    return parsePart(cursor, field, null);
  }
  const isThere = expectWordBefore(cursor, field.lead, `${field.lead} and ${expectedOf(field)}`);
  // A lead that was left out but meant stands nowhere.
  const isWritten = isThere && cursor.kind(-1) === "word" && !cursor.startsLine;
  return parsePart(cursor, field, isWritten ? cursor.range(-1) : null);
}

/** The optional parts, in any order; each once. */
function parseOptions(cursor: Cursor, fields: readonly Field[]): readonly SettingPart[] {
  const parts: SettingPart[] = [];
  let open = fields.filter((field) => field.isOptional);
  for (;;) {
    const word = takeOption(
      cursor,
      open.flatMap(({ lead }) => lead ?? []),
    );
    const field = open.find(({ lead }) => lead === word);
    if (word === null || field === undefined) {
      if (!skipRepeated(cursor, fields)) {
        return parts;
      }
      continue;
    }
    parts.push(parsePart(cursor, field, cursor.range(-1)));
    open = open.filter((other) => other !== field);
  }
}

/** `count 4 count 5`: the first one counts. */
function skipRepeated(cursor: Cursor, fields: readonly Field[]): boolean {
  const field = fields.find(({ lead, isOptional }) => isOptional && lead !== null && cursor.atWord(lead));
  if (field === undefined) {
    return false;
  }
  const range = cursor.take();
  cursor.note("unexpected-text", `'${field.lead}' stands here twice; the first one counts.`, range);
  parseTaken(cursor, field);
  return true;
}

function parsePart(cursor: Cursor, field: Field, lead: TextRange | null): SettingPart {
  const start = lead?.start ?? cursor.range().start;
  const { name } = field;
  const read = parseTaken(cursor, field);
  return { name, lead, ...read, range: cursor.rangeFrom(Math.min(start, cursor.previousEnd)) };
}

function parseTaken(cursor: Cursor, field: Field): Pick<SettingPart, "value" | "text"> {
  switch (field.takes) {
    case "quantity":
    case "count":
      return { value: parseExpression(cursor, expectedOf(field)), text: null };
    case "text":
      return { value: null, text: parseName(cursor, field) };
    case "choice": {
      const { start } = cursor.range();
      const { words } = field;
      const name = expectWord(cursor, { words, expected: expectedOf(field), whole: words });
      return { value: null, text: name === null ? null : { name, range: cursor.rangeFrom(start) } };
    }
    case "flag":
      return { value: null, text: null };
  }
}

/** What belongs at the place of a field: "a mass such as 2.1 kg". */
function expectedOf(field: Field): string {
  switch (field.takes) {
    case "quantity":
      return `${dimensionName(field.dimension)} such as ${field.example}`;
    case "count":
      return `a count such as ${field.example}`;
    case "text":
      return `a name such as "${field.example}"`;
    case "choice":
      return field.words.join(" or ");
    case "flag":
      return field.lead;
  }
}

/** A name in quotation marks; without them it is read as far as there are words. */
function parseName(cursor: Cursor, field: TextField): Identifier | null {
  if (cursor.at("string")) {
    const name = stringContent(cursor.text());
    return { name, range: cursor.take() };
  }
  if (!cursor.at("word")) {
    return failMissing(cursor, expectedOf(field));
  }
  if (cursor.kind(1) === "string") {
    const stray = cursor.range();
    cursor.guess("unexpected-text", "Only a name stands here.", stray, cursor.removal(stray));
    cursor.take();
    return parseName(cursor, field);
  }
  const { start } = cursor.range();
  while (cursor.kind() === "word" && !cursor.isKeyword(cursor.text())) {
    cursor.take();
  }
  if (cursor.range().start === start) {
    return failMissing(cursor, expectedOf(field));
  }
  const range = cursor.rangeFrom(start);
  const name = cursor.table.source.slice(range.start, range.end);
  const message = `A name stands in quotation marks: "${name}".`;
  const quote = fixOf("Put the name in quotation marks", [{ ...range, newText: `"${name}"` }]);
  cursor.note("missing-part", message, range, [quote]);
  return { name, range };
}
