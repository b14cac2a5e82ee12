import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { editFor } from "../../geometry/study/movable-let.ts";
import { type Variation, type VariationRequest, variationOf } from "../../geometry/study/variation.ts";

const TEXT = readFileSync(join(import.meta.dirname, "../../samples/brass-limpet-one-tooth.bar"), "utf8");

function varied(text: string, request: VariationRequest): Variation {
  const variation = variationOf(readSource(text), request);
  if ("reason" in variation) throw new Error(variation.message);
  return variation;
}

describe("a bar as a function of its lets", () => {
  test("gives what the text with the values written into it gives", () => {
    const variation = varied(TEXT, { names: ["tail", "lower"] });
    fc.assert(
      fc.property(fc.integer({ min: 6000, max: 10_000 }), fc.integer({ min: 2400, max: 6000 }), (a, b) => {
        const values = [a / 100, b / 100];
        const edits = variation.lets.map((of, i) => editFor(TEXT, of, String(values[i])));
        const written = analyse(readSource(applyEdits(TEXT, edits)));
        const there = variation.at(values);
        expect(there.figures).toEqual(written.figures);
        // What a message says of a place in the text is the place of the text as it is.
        expect(there.problems.map(({ code, message }) => [code, message])).toEqual(
          written.problems.map(({ code, message }) => [code, message]),
        );
      }),
      { numRuns: 20 },
    );
  });

  test("varies what a variant overrides in the variant alone", () => {
    const text = `${TEXT}variant "short" {\n  reach = 110 mm\n}\n`;
    const variation = varied(text, { names: ["reach", "waist"], variant: "short" });
    const written = text.replace("reach = 110 mm\n", "reach = 112 mm\n  waist = 25 mm\n");
    expect(variation.at([112, 25]).figures).toEqual(
      analyse(readSource(written), { variant: "short" }).figures,
    );
    expect(variation.start.figures).toEqual(analyse(readSource(text), { variant: "short" }).figures);
  });

  test("has the problems of the values, and figures unknown where they make no plate", () => {
    const crossed = varied(TEXT, { names: ["reach"] }).at([20]);
    expect(crossed.problems.some(({ severity }) => severity === "error")).toBe(true);
    expect(crossed.figures.mass["massKg"]).toBeNull();
    expect(crossed.figures.bite["cleanBiteMPerS"]).toBeNull();
  });

  test("says which let cannot be moved", () => {
    const refused = variationOf(readSource(TEXT), { names: ["tail", "wast"] });
    expect(refused).toMatchObject({ reason: "no-such-let", message: expect.stringContaining("waist") });
  });
});
