import { describe, expect, it } from "vitest";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { bareFractionFix, isBareFractionWithUnit } from "../../geometry/language/bare-fraction.ts";
import { parse } from "../../geometry/language/parse.ts";
import { visitExpressions } from "../../geometry/language/tree-walk.ts";

/** The text with every bare fraction put in parentheses. */
function mend(text: string): string {
  const edits: ReturnType<typeof bareFractionFix>["edits"][number][] = [];
  visitExpressions(parse(text).tree, (expression) => {
    if (isBareFractionWithUnit(expression)) {
      edits.push(...bareFractionFix(text, expression).edits);
    }
  });
  return applyEdits(text, edits);
}

describe("isBareFractionWithUnit", () => {
  it.each([
    ["thickness 1/4 in", "thickness (1/4) in"],
    ["thickness -1/4in", "thickness (-1/4) in"],
    ["let a = 3 mm + 3 / 8  in", "let a = 3 mm + (3 / 8) in"],
  ])("mends %s", (text, mended) => {
    expect(mend(text)).toBe(mended);
  });

  it.each([
    "thickness (1/4) in",
    "let a = 1 mm/4 mm",
    "let a = 1/4",
    "let a = 1/2.5 s",
    "let a = b/4 in",
    "let a = 1 - 4 in",
    "let a = 3*1/4 in",
  ])("leaves %s", (text) => {
    expect(mend(text)).toBe(text);
  });
});
