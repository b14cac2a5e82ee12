import type { TextRange } from "../text.ts";
import { stringContent } from "../tokenize.ts";
import type { Cursor } from "./cursor.ts";
import { failMissing } from "./fail-missing.ts";
import { fixOf } from "./fixes.ts";

export interface QuotedName {
  readonly name: string | null;
  /** The name with its quotes; where there is none, the empty range behind the last token. */
  readonly nameRange: TextRange;
}

/** Reads a name in quotes, as of a bar or a variant. */
export function parseQuotedName(cursor: Cursor, expected: string): QuotedName {
  if (cursor.at("string")) {
    const name = stringContent(cursor.text());
    return { name, nameRange: cursor.take() };
  }
  if (cursor.at("word") || cursor.at("number")) {
    return parseUnquotedName(cursor);
  }
  const place = { start: cursor.previousEnd, end: cursor.previousEnd };
  failMissing(cursor, expected);
  return { name: null, nameRange: place };
}

/** A name without its quotes is read up to the brace or the end of its line. */
function parseUnquotedName(cursor: Cursor): QuotedName {
  const { start } = cursor.range();
  while (!cursor.endsLine(0) && !cursor.isSymbol("{") && !cursor.isSymbol("=", 1)) {
    cursor.take();
  }
  const nameRange = cursor.rangeFrom(start);
  const name = cursor.table.source.slice(nameRange.start, nameRange.end);
  const quoted = `"${name.replaceAll('"', "")}"`;
  cursor.note("missing-part", `A name stands in quotation marks: ${quoted}.`, nameRange, [
    fixOf("Put the name in quotation marks", [{ ...nameRange, newText: quoted }]),
  ]);
  return { name: name.replaceAll('"', ""), nameRange };
}
