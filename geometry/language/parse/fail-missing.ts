import type { Cursor } from "./cursor.ts";

/** Reports that a part is missing, with what belongs there: "a length such as 12 mm". */
export function failMissing(cursor: Cursor, expected: string): null {
  const found = cursor.missingRange();
  const instead = found.end > found.start ? `, but ${quote(cursor)} stands there` : "";
  return cursor.fail("missing-part", `Expected ${expected}${instead}.`, found);
}

function quote(cursor: Cursor): string {
  const text = cursor.text();
  return text.length > 40 ? `'${text.slice(0, 40)}…'` : `'${text}'`;
}
