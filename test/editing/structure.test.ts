/** Outline view, folding and growing selections. */
import { describe, expect, it } from "vitest";
import { readSource } from "../../geometry/analysis/source.ts";
import {
  type DocumentSymbol,
  foldingRanges,
  selectionRanges,
  symbols,
} from "../../geometry/editing/editing.ts";
import { showRanges } from "../support/marks.ts";
import { BAR, sliceOf, sourceAt, withCrLf } from "./cursor-text.ts";
import { SAMPLES } from "./samples.ts";

const FILE = `# Two
# comments
bar "Plain bar"
thickness 12 mm
let reach = (130 # far
  mm - 6 mm)
outline repeat 2 {
  from (reach, 0 mm)
  line (-reach, 0 mm) round 3 mm
}
hole ring 4 at radius 40 mm diameter 6.5 mm
cutout { from (1 mm, 2 mm) close }
require mass <= 1.6 kg
variant "long" { reach = 140 mm thickness 10 mm }
`;

function printed(list: readonly DocumentSymbol[], indent = ""): readonly string[] {
  return list.flatMap(({ kind, name, detail, children }) => [
    `${indent}${kind}: ${name}${detail === "" ? "" : ` | ${detail}`}`,
    ...printed(children, `${indent}  `),
  ]);
}

describe("symbols", () => {
  it("are the statements, with steps and overrides inside", () => {
    expect(printed(symbols(readSource(FILE.replace("(130 # far\n  mm", "(130 mm # far\n"))))).toEqual([
      "bar: Plain bar",
      "setting: thickness | 12 mm",
      "let: reach | (130 mm - 6 mm)",
      "outline: outline | repeat 2",
      "  step: from | (reach, 0 mm)",
      "  step: line | (-reach, 0 mm) round 3 mm",
      "hole: hole ring | 4 at radius 40 mm diameter 6.5 mm",
      "hole: cutout",
      "  step: from | (1 mm, 2 mm)",
      "  step: close",
      "requirement: require | mass <= 1.6 kg",
      "variant: long | variant",
      "  override: reach | 140 mm",
      "  setting: thickness | 10 mm",
    ]);
  });

  it("have names even where the text lacks them, and ranges that lie in each other", () => {
    const check = ({ name, range, selectionRange, children }: DocumentSymbol): void => {
      expect(name).not.toBe("");
      expect(range.start <= selectionRange.start && selectionRange.end <= range.end, name).toBe(true);
      for (const child of children) {
        expect(range.start <= child.range.start && child.range.end <= range.end, child.name).toBe(true);
        check(child);
      }
    };
    const broken = [
      'bar ""\n',
      "bar\nlet\nlet = 3\nvariant { a = }\n",
      "outline { from\nlet a",
      'a = 3 mm\nvariant "" {',
      "hole ring\nrequire",
    ];
    for (const text of [...SAMPLES, ...broken]) symbols(readSource(text)).forEach(check);
    expect(printed(symbols(readSource(broken[1] ?? "")))[0]).toBe("bar: bar");
  });
});

describe("folding", () => {
  const folded = (text: string): readonly (readonly [string, string])[] =>
    foldingRanges(readSource(text)).map(({ kind, range }) => [kind, sliceOf(text, range)]);

  it("folds blocks, their last line in sight, and runs of comments", () => {
    expect(folded(FILE)).toEqual([
      ["comment", "# Two\n# comments"],
      ["block", "{\n  from (reach, 0 mm)\n  line (-reach, 0 mm) round 3 mm"],
    ]);
  });

  it("does the same on CRLF text", () => {
    expect(folded(withCrLf(FILE))).toEqual([
      ["comment", "# Two\r\n# comments"],
      ["block", "{\r\n  from (reach, 0 mm)\r\n  line (-reach, 0 mm) round 3 mm"],
    ]);
  });

  it("folds to the brace where that does not stand alone", () => {
    expect(folded("outline {\n from (1 mm, 2 mm)\n close }\n")).toEqual([
      ["block", "{\n from (1 mm, 2 mm)\n close "],
    ]);
  });

  it("leaves single comments, comments apart, comments behind code, and blocks of one line", () => {
    expect(folded('# one\n\n# two\nbar "x" # three\n# four\n')).toEqual([]);
    expect(folded("# one\nlet a = 1 # two\n# three\n")).toEqual([]);
    expect(folded('variant "x" {\n}\n')).toEqual([]);
    expect(folded('variant "x" { a = 1 }\n')).toEqual([]);
  });

  it("leaves a block that is not closed", () => {
    expect(folded("outline {\n from (1 mm, 2 mm)\n")).toEqual([]);
  });

  it("finds several runs of comments", () => {
    expect(folded("# a\n# b\n\n  # c\n  # d\n  # e\nbore 3 mm\n")).toEqual([
      ["comment", "# a\n# b"],
      ["comment", "# c\n  # d\n  # e"],
    ]);
  });
});

describe("growing selections", () => {
  function grown(marked: string): readonly string[] {
    const { source, offset } = sourceAt(marked);
    return selectionRanges(source, offset).map((range) => sliceOf(source.text, range));
  }

  it("go from the word by expression, point, step and block to the file", () => {
    const block = "\n  from (reach, 0 mm)\n  line (2 * re|ach - 6 mm, 0 mm) round 3 mm\n  close\n";
    const text = `bore 3 mm\noutline repeat 2 {${block}}\n`;
    const plain = (part: string) => part.replace("|", "");
    expect(grown(text)).toEqual([
      "reach",
      "2 * reach",
      "2 * reach - 6 mm",
      "2 * reach - 6 mm, 0 mm",
      "(2 * reach - 6 mm, 0 mm)",
      "line (2 * reach - 6 mm, 0 mm) round 3 mm",
      plain(block.trim()),
      plain(`{${block}}`),
      plain(`outline repeat 2 {${block}}`),
      plain(text),
    ]);
  });

  it("begin with what stands inside quotation marks and parentheses", () => {
    expect(grown('bar "Plain| bar"')).toEqual(["Plain bar", '"Plain bar"', 'bar "Plain bar"']);
    expect(grown("let a = (1| + 2) mm")).toEqual(["1", "1 + 2", "(1 + 2) mm", "let a = (1 + 2) mm"]);
  });

  it("are nested and grow, at every offset of samples and of broken text", () => {
    for (const text of [...SAMPLES, FILE, withCrLf(FILE), 'bar "open\n(((', "", "\n"]) {
      const source = readSource(text);
      for (let offset = 0; offset <= text.length; offset += 3) {
        const ranges = selectionRanges(source, offset);
        for (const [index, { start, end }] of ranges.entries()) {
          const inner = ranges[index - 1] ?? { start: offset, end: offset };
          expect(start <= inner.start && inner.end <= end && end - start > inner.end - inner.start).toBe(
            true,
          );
        }
        expect(text === "" || ranges.at(-1)?.end === text.length).toBe(true);
      }
    }
  });

  it("mark what they say they mark", () => {
    const source = readSource(BAR);
    const [word] = selectionRanges(source, BAR.indexOf("waist") + 1);
    expect(showRanges(BAR, word ? [word] : [])).toContain("let ⟦waist⟧ =");
  });
});
