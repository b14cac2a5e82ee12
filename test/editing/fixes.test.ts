import { describe, expect, it } from "vitest";
import { checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { fixesAt, safeFixes } from "../../geometry/editing/editing.ts";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import type { Problem } from "../../geometry/language/problem.ts";
import type { TextEdit } from "../../geometry/language/text.ts";
import { BAR, withCrLf } from "./cursor-text.ts";

const OUTLINE =
  "outline { from (60 mm, -20 mm) line (60 mm, 20 mm) line (-60 mm, 0 mm) close }\nbore 20 mm\n";

function fixedText(text: string): string {
  return applyEdits(text, safeFixes(checkSource(readSource(text))));
}

function problem(edits: readonly TextEdit[], safe = true): Problem {
  const range = { start: edits[0]?.start ?? 0, end: edits[0]?.end ?? 0 };
  return {
    severity: "error",
    code: "bad-character",
    message: "",
    range,
    fixes: [{ title: "", edits, safe }],
  };
}

const edit = (start: number, end: number, newText = "x"): TextEdit => ({ start, end, newText });

describe("all safe fixes", () => {
  it("are made at once, and no others", () => {
    const text = `${BAR}${OUTLINE}hole (20 mm, 0 mm) diameter 13 millimeters // note\ntarget edge offset −1 mm\nlet unused = 3 mm\n`;
    expect(fixedText(text)).toBe(
      `${BAR}${OUTLINE}hole (20 mm, 0 mm) diameter 13 mm # note\ntarget edge offset -1 mm\nlet unused = 3 mm\n`,
    );
    expect(fixedText(withCrLf(text))).toBe(withCrLf(fixedText(text)));
  });

  it("never overlap: the first in the text is made", () => {
    expect(safeFixes([problem([edit(4, 8)]), problem([edit(2, 5)])])).toEqual([edit(2, 5)]);
    expect(safeFixes([problem([edit(2, 2, "a")]), problem([edit(2, 2, "b")])])).toEqual([edit(2, 2, "a")]);
    expect(
      safeFixes([problem([edit(2, 4), edit(9, 9)]), problem([edit(4, 6)]), problem([edit(9, 11)])]),
    ).toEqual([edit(2, 4), edit(4, 6), edit(9, 9)]);
  });

  it("are none where none is safe", () => {
    expect(safeFixes([problem([edit(1, 2)], false)])).toEqual([]);
    expect(safeFixes([])).toEqual([]);
  });

  it("make the same text whatever the order of the problems", () => {
    const text = `${BAR}${OUTLINE}hole (20 mm, 0 mm) diameter 13 millimeters\ntarget edge offset −1 mm\n`;
    const problems = checkSource(readSource(text));
    expect(safeFixes([...problems].reverse())).toEqual(safeFixes(problems));
  });
});

describe("the fixes at a place", () => {
  const text = "thickness 12\nbore 3\n";
  const problems = readSource(text).problems.concat(checkSource(readSource(text)));

  it("are those of the problems that it touches", () => {
    const at = (offset: number) =>
      fixesAt(problems, { start: offset, end: offset }).map(({ fix }) => fix.title);
    expect(at(text.indexOf("12"))).toContain("Replace with '12 mm'");
    expect(at(text.indexOf("12") + 2)).toContain("Replace with '12 mm'");
    expect(at(text.indexOf("bore") - 1)).not.toContain("Replace with '3 mm'");
  });

  it("of a selection are all in it", () => {
    const titles = fixesAt(problems, { start: 0, end: text.length }).map(({ fix }) => fix.title);
    expect(titles).toEqual(expect.arrayContaining(["Replace with '12 mm'", "Replace with '3 mm'"]));
    expect(fixesAt([], { start: 0, end: 9 })).toEqual([]);
  });
});
