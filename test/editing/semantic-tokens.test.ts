import { describe, expect, it } from "vitest";
import { readSource } from "../../geometry/analysis/source.ts";
import {
  SEMANTIC_TOKEN_MODIFIERS,
  SEMANTIC_TOKEN_TYPES,
  semanticTokens,
} from "../../geometry/editing/editing.ts";
import { sliceOf, withCrLf } from "./cursor-text.ts";
import { SAMPLES } from "./samples.ts";

/** Each token as `text:type.modifier`. */
function classed(text: string): readonly string[] {
  return semanticTokens(readSource(text)).map(
    ({ range, type, modifiers }) => `${sliceOf(text, range)}:${[type, ...modifiers].join(".")}`,
  );
}

describe("semantic tokens", () => {
  it("tell lets from their declarations, and units, numbers and comments apart", () => {
    expect(classed("let reach = 130 mm # far\nthickness reach / 2\n")).toEqual([
      "let:keyword",
      "reach:variable.declaration.readonly",
      "=:operator",
      "130:number",
      "mm:enumMember",
      "# far:comment",
      "thickness:keyword",
      "reach:variable.readonly",
      "/:operator",
      "2:number",
    ]);
  });

  it("know words of the language, materials, figures, grades and names in quotes", () => {
    expect(
      classed('bar "x"\nmaterial hdpe\nspin 3 rpm ccw\nrequire balance <= G40\nlet a = sin(2 * pi * 1 rad)'),
    ).toEqual([
      "bar:keyword",
      '"x":string',
      "material:keyword",
      "hdpe:enumMember.defaultLibrary",
      "spin:keyword",
      "3:number",
      "rpm:enumMember",
      "ccw:keyword",
      "require:keyword",
      "balance:property",
      "<=:operator",
      "G40:number",
      "let:keyword",
      "a:variable.declaration.readonly",
      "=:operator",
      "sin:function.defaultLibrary",
      "2:number",
      "*:operator",
      "pi:variable.readonly.defaultLibrary",
      "*:operator",
      "1:number",
      "rad:enumMember",
    ]);
  });

  it("know the figures and lets of an aim", () => {
    expect(classed("let mass = 1 mm\naim most mass keeping balance <= G16 by mass").slice(5)).toEqual([
      "aim:keyword",
      "most:keyword",
      "mass:property",
      "keeping:keyword",
      "balance:property",
      "<=:operator",
      "G16:number",
      "by:keyword",
      "mass:variable.readonly",
    ]);
  });

  it("know steps, options, overrides, and names that no let defines", () => {
    const found = classed(
      'let face = 1 mm\noutline { from (face, b) arc (1 mm @ 2 deg) about (0 mm, 0 mm) turning left long }\nvariant "v" { face = 2 mm }\ntarget face\n',
    );
    expect(found).toContain("from:keyword");
    expect(found).toContain("turning:keyword");
    expect(found).toContain("face:variable.readonly");
    expect(found).toContain("b:variable");
    expect(found.at(-1)).toBe("face:keyword");
  });

  it("read units with signs in them part by part", () => {
    expect(classed("density 7850 kg/m^3").slice(2)).toEqual(
      ["kg:enumMember", "/:operator", "m:enumMember", "^:operator", "3:number"].slice(0, 5),
    );
  });

  it("take lines that cannot be read by their words", () => {
    expect(classed("hole hole (nonsense 3 mm radius sqrt\n// a note\nbore 3 mm")).toEqual([
      "hole:keyword",
      "hole:keyword",
      "nonsense:variable",
      "3:number",
      "mm:enumMember",
      "radius:keyword",
      "sqrt:function.defaultLibrary",
      "// a note:comment",
      "bore:keyword",
      "3:number",
      "mm:enumMember",
    ]);
  });

  it("are in order, apart, on one line each, and of the legend", () => {
    for (const text of [...SAMPLES, ...SAMPLES.map(withCrLf), 'bar "open\n"x\n// y\r\nlet 3', "\ufeffbar"]) {
      let end = 0;
      for (const { range, type, modifiers } of semanticTokens(readSource(text))) {
        expect(range.start >= end && range.end > range.start).toBe(true);
        expect(sliceOf(text, range)).not.toMatch(/[\r\n]/);
        expect(SEMANTIC_TOKEN_TYPES).toContain(type);
        for (const modifier of modifiers) expect(SEMANTIC_TOKEN_MODIFIERS).toContain(modifier);
        end = range.end;
      }
    }
  });
});
