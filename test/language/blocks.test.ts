/** Blocks of settings: what their tables promise, and what the evaluation makes of them. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse, checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { filledTemplate } from "../../geometry/editing/template.ts";
import { optionWordsOf, wordsOf } from "../../geometry/language/blocks/block-table.ts";
import { BLOCKS } from "../../geometry/language/blocks/blocks.ts";
import { format } from "../../geometry/language/format.ts";
import { UNITS } from "../../geometry/language/parse/word-sets.ts";
import { parse } from "../../geometry/language/parse.ts";
import { unitFromText } from "../../geometry/language/units.ts";
import { BLOCK_WORDS } from "../../geometry/language/vocabulary.ts";

const PLATE = `thickness 12 mm
material wear_steel_450
let heavy = 2 kg
outline { from (90 mm, -60 mm) line (90 mm, 60 mm) line (-90 mm, 60 mm) line (-90 mm, -60 mm) close }
bore 20 mm
spin 3000 rpm ccw
`;

function designOf(text: string, variant: string | null = null) {
  return analyse(readSource(`${PLATE}${text}`), { variant }).design;
}

/** Problems of the values of a block, as `code: message`. */
function problems(text: string): readonly string[] {
  const told = checkSource(readSource(`${PLATE}${text}`));
  return told.filter(({ code }) => code !== "unused-name").map(({ code, message }) => `${code}: ${message}`);
}

/** Whether a problem is one of how something is written, not of what the bar is. */
function isOfWriting(told: string): boolean {
  return /^(?:missing-unit|wrong-unit|out-of-range|unknown-figure|duplicate-statement)/.test(told);
}

describe.each(BLOCK_WORDS)("the table of %s", (word) => {
  const table = BLOCKS[word];

  it("has examples, a template and meanings that are right", () => {
    expect(table.summary).toMatch(/^[A-Z].*\.$/);
    for (const text of [table.example, filledTemplate(table.template)]) {
      expect(text.startsWith(`${word} {`)).toBe(true);
      expect(parse(text).problems).toEqual([]);
      expect(problems(text).filter(isOfWriting)).toEqual([]);
      expect(format(format(text))).toBe(format(text));
    }
    for (const row of table.settings) {
      expect(row.summary).toMatch(/^[A-Z].*\.$/);
      expect(row.example.startsWith(row.word)).toBe(true);
      expect(parse(`${word} { ${row.example} }`).problems, row.example).toEqual([]);
      expect(problems(`${word} { ${row.example} }`).filter(isOfWriting)).toEqual([]);
    }
    const { limitExample } = table;
    if (limitExample !== null) expect(parse(`${word} { ${limitExample} }`).problems).toEqual([]);
  });

  it("has words that no unit has, each field one name, optional ones behind the others and with a word", () => {
    for (const known of wordsOf(table)) expect(UNITS.has(known), known).toBe(false);
    for (const row of table.settings) {
      const { fields } = row;
      expect(new Set(fields.map(({ name }) => name)).size).toBe(fields.length);
      const firstOptional = fields.findIndex(({ isOptional }) => isOptional);
      if (firstOptional >= 0)
        expect(fields.slice(firstOptional).every(({ isOptional }) => isOptional)).toBe(true);
      for (const field of fields) if (field.isOptional) expect(field.lead).not.toBeNull();
      for (const option of optionWordsOf(row))
        expect(table.settings.map((other) => other.word)).not.toContain(option);
    }
  });

  it("has units of the dimension of their fields, and ranges that hold the example", () => {
    for (const field of table.settings.flatMap(({ fields }) => fields)) {
      if (field.takes !== "quantity") continue;
      if (field.unit !== "") expect(unitFromText(field.unit)?.dimension).toEqual(field.dimension);
      expect(field.range.least).toBeLessThan(field.range.most);
      expect(field.about).toMatch(/^[A-Z].*\.$/);
    }
  });
});

describe("a block", () => {
  it("is null in the design where the file has none", () => {
    const { budget, event } = designOf("");
    expect([budget, event]).toEqual([null, null]);
  });

  it("gives its values in the units of its table, whatever they are written in", () => {
    const { budget } = designOf('budget { limit 3 lb part "a" 500 g + 1 kg count 4 spare scale 2000 g }');
    expect(budget?.limitKg?.value).toBeCloseTo(3 * 0.45359237, 12);
    expect(budget?.scaleKg?.value).toBeCloseTo(2, 12);
    expect(budget?.parts).toMatchObject([{ name: "a", massKg: 1.5, count: 4, isSpare: true }]);
  });

  it("leaves out what is wrong, and says what is", () => {
    const { budget } = designOf('budget { limit 6 mm part "a" 2 }');
    expect(budget).toMatchObject({ limitKg: null, scaleKg: null, parts: [], isWhole: false });
    expect(problems('budget { limit 6 mm part "a" 2 }')).toEqual([
      "wrong-unit: The limit is a mass such as 1.6 kg, but '6 mm' is a length.",
      "missing-unit: The mass of a part is a mass such as 1.6 kg, but '2' has no unit.",
    ]);
  });

  it("refuses what cannot be with the reason", () => {
    expect(problems('budget { part "a" -2 kg count 0 }')).toEqual([
      "out-of-range: The mass of a part has to be more than 0 kg; this is -2 kg. Whatever is weighed has a mass.",
      "out-of-range: The count of a part has to be a whole number from 1 to 1000; this is 0.",
    ]);
    expect(problems("event { measured_spin_down 2 h }")).toEqual([
      "out-of-range: The time of the spin-down has to be at most 3600 s; this is 2 h. No bar turns for an hour.",
    ]);
  });

  it("takes the first of settings that may stand but once", () => {
    expect(designOf("budget { limit 6 kg limit 7 kg }").budget?.limitKg?.value).toBe(6);
    expect(problems("budget { limit 6 kg limit 7 kg }")).toEqual([
      "duplicate-statement: There is a line 'limit' in this budget already; the first one counts.",
    ]);
    expect(problems("budget { limit 6 kg }\nbudget { limit 7 kg }")).toEqual([
      "duplicate-statement: There is a line 'budget' already; the first one counts.",
    ]);
  });

  it("follows the lets of a variant", () => {
    const text = 'budget { limit heavy * 3 }\nvariant "light" { heavy = 1 kg }';
    expect(designOf(text).budget?.limitKg?.value).toBe(6);
    expect(designOf(text, "light").budget?.limitKg?.value).toBe(3);
  });

  it("limits the figures that can be required", () => {
    const { event } = designOf("event { tip_speed <= 75 m/s bite at 3 m/s >= 2 mm spin_down <= 1 min }");
    expect(event?.limits.map(({ figure, relation, atMPerS }) => [figure, relation, atMPerS])).toEqual([
      ["tip_speed", "<=", null],
      ["bite", ">=", 3],
      ["spin_down", "<=", null],
    ]);
    expect(problems("event { tip_sped <= 75 m/s }")).toEqual([
      "unknown-figure: 'tip_sped' is not a figure that can be required; did you mean tip_speed?",
    ]);
  });

  it("is laid out one step in, and what is laid out stays", () => {
    const written = 'budget   {\nlimit   6 kg\npart "a"  2 kg   # all of it\n}\nevent{mass<=2 kg}\n';
    const laid = 'budget {\n  limit 6 kg\n  part "a" 2 kg  # all of it\n}\nevent { mass <= 2 kg }\n';
    expect(format(written)).toBe(laid);
    expect(format(laid)).toBe(laid);
  });

  it("reads back what is written of any masses and counts", () => {
    const mass = fc.integer({ min: 1, max: 50_000 });
    const part = fc.tuple(mass, fc.integer({ min: 1, max: 20 }), fc.boolean());
    fc.assert(
      fc.property(fc.array(part, { maxLength: 12 }), mass, (parts, limit) => {
        const lines = parts.map(
          ([grams, count, spare], i) => `part "p${i}" ${grams} g count ${count}${spare ? " spare" : ""}`,
        );
        const { budget } = designOf(`budget {\n${[`limit ${limit} g`, ...lines].join("\n")}\n}`);
        expect(budget?.limitKg?.value).toBeCloseTo(limit / 1000, 9);
        expect(budget?.parts.map(({ count, isSpare }) => [count, isSpare])).toEqual(
          parts.map(([, count, spare]) => [count, spare]),
        );
        for (const [i, [grams]] of parts.entries())
          expect(budget?.parts[i]?.massKg).toBeCloseTo(grams / 1000, 9);
      }),
      { numRuns: 50 },
    );
  });
});
