/** The units library is handed fixed texts only, and of the library only its units are there. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, it, vi } from "vitest";

const handed = vi.hoisted(() => ({ texts: [] as string[] }));

vi.mock("mathjs", async (importOriginal) => {
  const { createUnitClass } = await importOriginal<typeof import("mathjs")>();
  return {
    createUnitClass: (parts: Readonly<Record<string, unknown>>) => {
      const unitClass = createUnitClass(parts);
      return {
        parse: (text: string) => {
          handed.texts.push(text);
          return unitClass.parse(text);
        },
      };
    },
  };
});

const { evaluate } = await import("../../geometry/language/evaluate.ts");
const { parse } = await import("../../geometry/language/parse.ts");
const { namedUnit, unitFromText } = await import("../../geometry/language/units.ts");
const { UNIT_NAMES } = await import("../../geometry/language/vocabulary.ts");

it("brings in the unit class alone: no evaluate, no parse of expressions, nothing like them", () => {
  const core = new URL("../../geometry/", import.meta.url);
  const users = readdirSync(core, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => readFileSync(new URL(name, core), "utf8"))
    .filter((text) => /from\s+"mathjs/.test(text) || /import\("mathjs/.test(text));
  expect(users).toHaveLength(1);
  expect(users[0]?.match(/import[^;]*"mathjs[^;]*;/g)).toEqual(['import { createUnitClass } from "mathjs";']);
});

it("is asked for each unit once, when the table is made, and never for the text of a file", () => {
  namedUnit("mm");
  const before = [...handed.texts];
  expect(before).toHaveLength(UNIT_NAMES.length);
  const texts = [
    "let a = 5 evaluate",
    "let a = 2 mm^9*kg/lb",
    'let a = import("x")',
    "let a = 1 (1+1) mm",
    "let a = 1 mile",
  ];
  for (const text of texts) {
    const { tree } = parse(`${text}\ntarget edge offset a`);
    evaluate(tree, { variant: null, figures: [] });
  }
  for (const text of ["mile", "evaluate(1)", "mm^2*(3)", "2 m"]) unitFromText(text);
  expect(handed.texts).toEqual(before);
});
