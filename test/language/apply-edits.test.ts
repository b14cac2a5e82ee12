import { describe, expect, it } from "vitest";
import { applyEdits, canApply } from "../../geometry/language/apply-edits.ts";

const edit = (start: number, end: number, newText: string) => ({ start, end, newText });

describe("applyEdits", () => {
  it("replaces, inserts and deletes by the offsets of the text before", () => {
    expect(applyEdits("bore 22 mm", [edit(0, 4, "hole"), edit(5, 7, "30"), edit(10, 10, " # wide")])).toBe(
      "hole 30 mm # wide",
    );
    expect(applyEdits("abc", [edit(1, 2, "")])).toBe("ac");
    expect(applyEdits("abc", [])).toBe("abc");
  });

  it("takes edits in any order; insertions at one place keep theirs", () => {
    expect(applyEdits("abc", [edit(2, 3, "C"), edit(0, 1, "A")])).toBe("AbC");
    expect(applyEdits("abc", [edit(1, 1, "x"), edit(1, 1, "y"), edit(1, 2, "B")])).toBe("axyBc");
  });

  it("does not write to its arguments", () => {
    const edits = Object.freeze([edit(2, 3, "C"), edit(0, 1, "A")]);
    expect(applyEdits("abc", edits)).toBe("AbC");
  });

  it("knows beforehand which can be made", () => {
    const good = [
      [edit(2, 3, ""), edit(0, 1, "")],
      [edit(1, 1, "x"), edit(1, 1, "y"), edit(1, 2, "")],
      [edit(3, 3, "x")],
      [],
    ];
    const bad = [[edit(0, 2, ""), edit(1, 3, "")], [edit(2, 4, "")], [edit(-1, 1, "")], [edit(2, 1, "")]];
    for (const edits of good) expect(canApply(edits, 3)).toBe(true);
    for (const edits of bad) expect(canApply(edits, 3)).toBe(false);
  });

  it("refuses edits that overlap or lie outside", () => {
    expect(() => applyEdits("abc", [edit(0, 2, ""), edit(1, 3, "")])).toThrow(RangeError);
    expect(() => applyEdits("abc", [edit(2, 4, "")])).toThrow(RangeError);
    expect(() => applyEdits("abc", [edit(-1, 1, "")])).toThrow(RangeError);
    expect(() => applyEdits("abc", [edit(2, 1, "")])).toThrow(RangeError);
  });
});
