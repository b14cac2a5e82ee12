import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { definitionAt, referencesAt, renameEdits, renameTarget } from "../../geometry/editing/editing.ts";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { readRanges, showRanges } from "../support/marks.ts";
import { sliceOf, sourceAt, withCrLf } from "./cursor-text.ts";
import { SAMPLES } from "./samples.ts";

const BLOCK = `let reach = 130 mm
let tail = reach - 34 mm   # reach of the tail
outline { from (reach, 0 mm) line (-tail, reach / 2) close }
variant "long reach" { reach = 140 mm tail = reach / 2 }
`;

describe("the definition of a name", () => {
  it.each([
    ["from (re|ach, 0 mm)", "from (reach, 0 mm)"],
    ["reach| - 34", "reach - 34"],
    ["{ rea|ch = 140", "{ reach = 140"],
    ["let r|each", "let reach"],
  ])("is its let: %s", (marked, plain) => {
    const { source, offset } = sourceAt(BLOCK.replace(plain, marked));
    const definition = definitionAt(source, offset);
    expect(definition && sliceOf(source.text, definition.statement)).toBe("let reach = 130 mm");
    expect(definition && sliceOf(source.text, definition.name)).toBe("reach");
    expect(definition && sliceOf(source.text, definition.origin)).toBe("reach");
  });

  it("of two lets of one name is the first, which counts", () => {
    const { source, offset } = sourceAt("let a = 1 mm\nlet a = 2 mm\nthickness |a\n");
    expect(definitionAt(source, offset)?.statement.start).toBe(0);
  });

  it("is nowhere for what no let defines", () => {
    for (const marked of [
      "let a = |b",
      "material wear|_steel_450",
      "thick|ness a",
      "# a|",
      'bar "a|"',
      "let a = si|n(1)",
      "let a = p|i",
      "require ma|ss <= 1 kg",
      "|",
      "let a = 5 m|m",
    ]) {
      const { source, offset } = sourceAt(marked);
      expect(definitionAt(source, offset), marked).toBeNull();
    }
  });
});

describe("the references of a name", () => {
  it("are every use, override and, if asked for, the declaration", () => {
    const all = BLOCK.replace(/\breach\b(?! of| tip|")/g, "⟦reach⟧");
    const { text, ranges } = readRanges(all);
    for (const { start } of ranges) {
      const found = referencesAt(readSource(text), start + 1, { includeDeclaration: true });
      expect(showRanges(text, found)).toBe(all);
    }
    const without = referencesAt(readSource(text), ranges[0]?.start ?? 0, { includeDeclaration: false });
    expect(showRanges(text, without)).toBe(all.replace("let ⟦reach⟧", "let reach"));
  });

  it("are none where no let's name stands", () => {
    const { source, offset } = sourceAt("let a = 1 mm\nthick|ness a\n");
    expect(referencesAt(source, offset, { includeDeclaration: true })).toEqual([]);
  });
});

function renamed(marked: string, newName: string): string {
  const { source, offset } = sourceAt(marked);
  const result = renameEdits(source, offset, newName);
  return "refused" in result ? `refused: ${result.refused}` : applyEdits(source.text, result.edits);
}

describe("renaming", () => {
  it("changes declaration, uses and overrides, and no comment, text or part of a word", () => {
    const marked = BLOCK.replace("let tail", "let ta|il");
    expect(renamed(marked, "back")).toBe(
      BLOCK.replace("let tail", "let back")
        .replace("(-tail", "(-back")
        .replace("tail = reach / 2", "back = reach / 2"),
    );
  });

  it("starts from any place of the name, and tells which", () => {
    const { source, offset } = sourceAt(BLOCK.replace("from (reach", "from (rea|ch"));
    const target = renameTarget(source, offset);
    expect("name" in target && [target.name, sliceOf(source.text, target.range)]).toEqual(["reach", "reach"]);
    expect(renamed(BLOCK.replace("{ reach =", "{ reach| ="), "far")).toContain("let far = 130 mm");
  });

  it("keeps CRLF and broken lines as they are", () => {
    const text = withCrLf("let a = 1 mm\nthis is ( nonsense\nthickness a|\n");
    expect(renamed(text, "thick")).toBe(withCrLf("let thick = 1 mm\nthis is ( nonsense\nthickness thick\n"));
  });

  it("to the same name changes nothing", () => {
    expect(renamed("let a| = 1 mm\n", "a")).toBe("let a = 1 mm\n");
  });

  it("takes words of statements and letters of any script", () => {
    expect(renamed("let a| = 1 mm\nthickness a\n", "face")).toBe("let face = 1 mm\nthickness face\n");
    expect(renamed("let a| = 1 mm\nthickness a\n", "länge_2")).toBe(
      "let länge_2 = 1 mm\nthickness länge_2\n",
    );
  });

  it.each([
    ["mm", "'mm' is a unit and cannot name a let."],
    ["in", "'in' is a unit and cannot name a let."],
    ["min", "'min' is a unit and cannot name a let."],
    ["sqrt", "'sqrt' is a function and cannot name a let."],
    ["pi", "'pi' is a constant and cannot name a let."],
    ["b", "There is a let 'b' already."],
    ["G40", "'G40' is a balance grade and cannot name a let."],
    ["", "'' is not a name; a name starts with a letter and has letters, digits and _ only."],
    ["2a", "'2a' is not a name; a name starts with a letter and has letters, digits and _ only."],
    ["a b", "'a b' is not a name; a name starts with a letter and has letters, digits and _ only."],
    ["a-b", "'a-b' is not a name; a name starts with a letter and has letters, digits and _ only."],
    ["Ω", "'Ω' is not a name; a name starts with a letter and has letters, digits and _ only."],
    ["a\n", "'a\n' is not a name; a name starts with a letter and has letters, digits and _ only."],
  ])("refuses %j", (newName, message) => {
    expect(renamed("let a| = 1 mm\nlet b = a\nthickness b\n", newName)).toBe(`refused: ${message}`);
  });

  it("refuses a name that would be read as a word of the language where it stands", () => {
    const marked = "let a| = 1 mm\noutline { from (\n a\n , 0 mm) close }\n";
    expect(renamed(marked, "close")).toContain("refused: 'close' would be read as a word");
    expect(renamed(marked, "line")).toContain("from (\n line\n");
  });

  it.each([
    ["material wear|_steel_450", "Materials come from the table of the tool and keep their names."],
    ["let t = 1 mm\naim most ma|ss by t", "Figures are computed by the tool and keep their names."],
    ["require ma|ss <= 1 kg", "Figures are computed by the tool and keep their names."],
    ['variant "lo|ng" { }', "plain text: change it where it stands"],
    ["let a = si|n(30 deg)", "'sin' is a function of the language and keeps its name."],
    ["let a = 2 * p|i", "'pi' is a constant of the language and keeps its name."],
    ["let a = b| * 2", "No let of this file defines 'b'."],
    ["thick|ness 12 mm", "Only the names of lets can be renamed."],
    ["thickness 12 m|m", "Only the names of lets can be renamed."],
    ["|", "Only the names of lets can be renamed."],
  ])("says why there is nothing to rename: %s", (marked, message) => {
    const { source, offset } = sourceAt(marked);
    const target = renameTarget(source, offset);
    expect("refused" in target && target.refused).toContain(message);
    expect(renamed(marked, "other")).toContain(message);
  });

  const names = fc.constantFrom(
    "x",
    "far",
    "line",
    "close",
    "round",
    "from",
    "to",
    "bar",
    "let",
    "outline",
    "radius",
    "face",
    "ÄÖ_1",
    "G",
    "e3",
  );

  it("and back gives the same text, and never changes a figure or a problem", () => {
    fc.assert(
      fc.property(fc.constantFrom(...SAMPLES), names, fc.nat(), (text, newName, pick) => {
        const source = readSource(text);
        const lets = source.tree.statements.filter((statement) => statement.kind === "let");
        const target = lets[pick % lets.length]?.name;
        if (!target || source.text.includes(` ${newName} `)) return;
        const result = renameEdits(source, target.range.start, newName);
        if ("refused" in result) return;
        const changed = readSource(applyEdits(text, result.edits));
        for (const variant of [null, ...source.variants]) {
          const [before, after] = [analyse(source, { variant }), analyse(changed, { variant })];
          expect(after.figures).toEqual(before.figures);
          expect(after.problems.length).toBe(before.problems.length);
        }
        const back = renameEdits(changed, target.range.start, target.name);
        expect("edits" in back && applyEdits(changed.text, back.edits)).toBe(text);
      }),
      { seed: 4711, numRuns: 40 },
    );
  });
});
