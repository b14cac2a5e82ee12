import { describe, expect, it } from "vitest";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { deleteLines, insertLineBelow } from "../../geometry/language/evaluate/lines.ts";
import { readRanges } from "../support/marks.ts";

function edited(marked: string, edit: typeof deleteLines): string {
  const { text, ranges } = readRanges(marked);
  const [range] = ranges;
  return range === undefined ? text : applyEdits(text, [edit(text, range)]);
}

describe("deleteLines", () => {
  it.each([
    ["a\n⟦b⟧\nc", "a\nc"],
    ["a\n  ⟦b⟧ # why\nc", "a\nc"],
    ["a\r\n⟦b⟧\r\nc", "a\r\nc"],
    ["a\n⟦b\nb⟧\nc", "a\nc"],
    ["a\n⟦b⟧", "a\n"],
    ["⟦b⟧", ""],
    ["a ⟦b⟧\nc", "a \nc"],
    ["⟦b⟧ c\nd", " c\nd"],
  ])("%j leaves %j", (marked, left) => {
    expect(edited(marked, deleteLines)).toBe(left);
  });
});

describe("insertLineBelow", () => {
  it.each([
    ["⟦a⟧ # why\nc", "a # why\nnew\nc"],
    ["⟦a⟧\r\nc", "a\r\nnew\r\nc"],
    ["⟦a⟧", "a\nnew"],
  ])("%j gives %j", (marked, result) => {
    expect(edited(marked, (text, range) => insertLineBelow(text, range, "new"))).toBe(result);
  });
});
