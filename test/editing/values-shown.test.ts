/** Inlay hints and lenses. */
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { inlayHints, lenses } from "../../geometry/editing/editing.ts";
import { LETS, withCrLf } from "./cursor-text.ts";
import { SAMPLES } from "./samples.ts";

/** The text with its hints written into it, in ⟨ ⟩. */
function hinted(text: string, variant: string | null = null, range = { start: 0, end: text.length }): string {
  const hints = inlayHints(analyse(readSource(text), { variant }), range);
  return [...hints]
    .sort((a, b) => b.offset - a.offset)
    .reduce(
      (shown, { offset, text: hint }) => `${shown.slice(0, offset)} ⟨${hint}⟩${shown.slice(offset)}`,
      text,
    );
}

describe("inlay hints", () => {
  it("stand behind every outermost expression that is no number", () => {
    expect(
      hinted(
        "let a = 12 mm\nlet b = -12 mm\nlet c = a / 2\nthickness max(a, c + 1 mm)\nbore a\nhole (-a, 0 mm) diameter (1/2) in\n",
      ),
    ).toBe(
      "let a = 12 mm\nlet b = -12 mm\nlet c = a / 2 ⟨= 6 mm⟩\nthickness max(a, c + 1 mm) ⟨= 12 mm⟩\nbore a ⟨= 12 mm⟩\nhole (-a ⟨= -12 mm⟩, 0 mm) diameter (1/2) in ⟨= 12.7 mm⟩\n",
    );
  });

  it("speak the units of the file", () => {
    expect(hinted("let a = 3 in\nlet b = 1 in\nthickness a - b\nspin 2 * 1000 rpm ccw")).toBe(
      "let a = 3 in\nlet b = 1 in\nthickness a - b ⟨= 2 in⟩\nspin 2 * 1000 rpm ⟨= 2000 rpm⟩ ccw",
    );
  });

  it("take bounds, requirements and plain numbers along", () => {
    expect(
      hinted(
        "let n = 4\nlet a = 3 mm from 1 mm + 1 mm to 8 mm\nhole ring n * 2 at radius 20 mm diameter 3 mm\nrequire bite at 2 * 1 m/s >= a",
      ),
    ).toBe(
      "let n = 4\nlet a = 3 mm from 1 mm + 1 mm ⟨= 2 mm⟩ to 8 mm\nhole ring n * 2 ⟨= 8⟩ at radius 20 mm diameter 3 mm\nrequire bite at 2 * 1 m/s ⟨= 2 m/s⟩ >= a ⟨= 3 mm⟩",
    );
  });

  it("hold in each variant what holds there", () => {
    const text = 'let a = 10 mm\nlet b = a * 2\nbore b\nvariant "v" { a = 20 mm thickness a / 4 }\n';
    expect(hinted(text)).toContain("bore b ⟨= 20 mm⟩");
    expect(hinted(text)).toContain("thickness a / 4 ⟨= 5 mm⟩");
    expect(hinted(text, "v")).toContain("bore b ⟨= 40 mm⟩");
    expect(hinted(text, "v")).toContain("thickness a / 4 ⟨= 5 mm⟩");
  });

  it("leave out what has no value, and keep to the range", () => {
    expect(hinted("let a = b\nlet c = 1 mm + 2 deg\nthickness 3 mm\n")).not.toContain("⟨");
    const text = "let a = 1 mm\nlet b = a * 2\nlet c = a * 3\n";
    const second = { start: text.indexOf("let b"), end: text.indexOf("let c") - 1 };
    expect(hinted(text, null, second)).toBe(text.replace("a * 2", "a * 2 ⟨= 2 mm⟩"));
  });

  it("tell more in the tooltip", () => {
    const text = `${LETS}bore reach - 100 mm`;
    expect(inlayHints(analyse(readSource(text)), { start: 0, end: text.length }).at(-1)?.tooltip).toBe(
      "30 mm = 1.1811 in",
    );
  });

  it("are the same on CRLF text", () => {
    const text = "let a = 1 mm\nlet b = a * 2\n";
    expect(hinted(withCrLf(text))).toBe(withCrLf(hinted(text)));
  });
});

describe("lenses", () => {
  const TWO_TEETH = SAMPLES.find((text) => text.includes("Pickled Heron two-tooth")) ?? "";

  it("stand above the bar and each variant with its figures", () => {
    const source = readSource(TWO_TEETH);
    expect(lenses(source).map(({ title, variant }) => [variant, title])).toEqual([
      [null, "1.05 kg · G0 · 57.2 m/s tip · clean bite to 2.49 m/s"],
      ["practice speed", "1.05 kg · G0 · 24.5 m/s tip · clean bite to 1.07 m/s"],
      ["long reach", "1.17 kg · G0 · 62.5 m/s tip · clean bite to 2.49 m/s"],
    ]);
    expect(lenses(source).map(({ range }) => TWO_TEETH.slice(range.start, range.start + 7))).toEqual([
      'bar "Pi',
      "variant",
      "variant",
    ]);
  });

  it("speak inches where asked to", () => {
    expect(lenses(readSource(TWO_TEETH), { system: "in" })[0]?.title).toBe(
      "2.32 lb · G0 · 128 mph tip · clean bite to 5.58 mph",
    );
  });

  it("leave out what is not known, and say so where that is all", () => {
    const [first] = lenses(readSource(TWO_TEETH.replace(/^spin .*$/m, "")));
    expect(first?.title).toBe("1.05 kg");
    expect(lenses(readSource('bar "x"\n'))[0]?.title).toBe("no figures yet");
  });

  it("take analyses that the host has made", () => {
    const source = readSource(TWO_TEETH);
    const asked: (string | null)[] = [];
    lenses(source, {
      analyseVariant: (variant) => {
        asked.push(variant);
        return analyse(source, { variant });
      },
    });
    expect(asked).toEqual([null, "practice speed", "long reach"]);
  });

  it("stand once for a name that stands twice, and not for one without a name", () => {
    const source = readSource('bar "x"\nbar "y"\nvariant "v" { }\nvariant "v" { }\nvariant { }\n');
    expect(lenses(source).map(({ variant }) => variant)).toEqual([null, "v"]);
    expect(lenses(readSource(""))).toEqual([]);
  });
});
