/** The help tables: their examples are right, their snippets make right files, and they leave no word out. */
import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import {
  completionsAt,
  FUNCTION_HELP,
  OPTION_HELP,
  PI_HELP,
  STATEMENT_HELP,
  STEP_HELP,
  signatureAt,
} from "../../geometry/editing/editing.ts";
import { STATEMENT_FORMS, STEP_FORMS } from "../../geometry/editing/forms.ts";
import { filledTemplate } from "../../geometry/editing/template.ts";
import { functionRule } from "../../geometry/language/functions.ts";
import {
  FUNCTION_NAMES,
  OPTION_WORDS,
  STATEMENT_WORDS,
  STEP_WORDS,
} from "../../geometry/language/vocabulary.ts";

const STANDARD: readonly (readonly [string, string])[] = [
  ["bar", 'bar "test"'],
  ["thickness", "thickness 12 mm"],
  ["material", "material wear_steel_450"],
  [
    "outline",
    "outline { from (90 mm, -60 mm) line (90 mm, 60 mm) line (-90 mm, 60 mm) line (-90 mm, -60 mm) close }",
  ],
  ["bore", "bore 20 mm"],
  ["spin", "spin 3000 rpm ccw"],
  ["let", "let tail = 96 mm from 80 mm to 120 mm\nlet lower = 30 mm\nlet waist = 24 mm from 20 mm to 30 mm"],
];

/** A whole file in which a line takes the place of the standard one of its kind. */
function fileWith(line: string): string {
  return [...STANDARD.filter(([word]) => !line.startsWith(word)).map(([, text]) => text), line, ""].join(
    "\n",
  );
}

function inPath(step: string): string {
  if (step.startsWith("from"))
    return fileWith(`outline { ${step} line (60 mm, 20 mm) line (-60 mm, 0 mm) close }`);
  const between = step === "close" ? "line (60 mm, 20 mm)" : step;
  return fileWith(`outline { from (60 mm, -20 mm) ${between} line (-60 mm, 0 mm) close }`);
}

/** What is wrong with how a file is written and what its values are; a name that nothing uses is fine here. */
function mistakes(text: string): readonly string[] {
  const source = readSource(text);
  const kinds = [
    "wrong-unit",
    "missing-unit",
    "undefined-name",
    "bad-argument",
    "unknown-material",
    "unknown-figure",
    "out-of-range",
    "outside-bounds",
    "not-movable",
    "no-bounds",
    "duplicate-name",
  ];
  const ofValues = analyse(source).problems.filter(({ code }) => kinds.includes(code));
  return [...source.problems, ...ofValues].map(({ code, message }) => `${code}: ${message}`);
}

describe("statements", () => {
  it("have help and forms each, and nothing else has", () => {
    expect(Object.keys(STATEMENT_HELP).sort()).toEqual([...STATEMENT_WORDS].sort());
    expect(Object.keys(STATEMENT_FORMS).sort()).toEqual([...STATEMENT_WORDS].sort());
  });

  it.each(STATEMENT_WORDS)("%s: the example and the snippets are right", (word) => {
    const { summary, example, snippets } = STATEMENT_HELP[word];
    expect(summary).toMatch(/^[A-Z].*\.$/);
    expect(mistakes(fileWith(example))).toEqual([]);
    for (const { label, template } of snippets) {
      expect(label.startsWith(word) && template.startsWith(word), label).toBe(true);
      expect(mistakes(fileWith(filledTemplate(template))), label).toEqual([]);
    }
  });
});

describe("steps", () => {
  it("have help and forms each, and nothing else has", () => {
    expect(Object.keys(STEP_HELP).sort()).toEqual([...STEP_WORDS].sort());
    expect(Object.keys(STEP_FORMS).sort()).toEqual([...STEP_WORDS].sort());
  });

  it.each(STEP_WORDS)("%s: the example and the snippets are right", (word) => {
    const { example, snippets } = STEP_HELP[word];
    expect(mistakes(inPath(example))).toEqual([]);
    for (const { label, template } of snippets) {
      expect(label.startsWith(word) && template.startsWith(word), label).toBe(true);
      expect(mistakes(inPath(filledTemplate(template))), label).toEqual([]);
    }
  });
});

describe("options", () => {
  it("have help each, and so has `from`", () => {
    expect(Object.keys(OPTION_HELP).sort()).toEqual([...OPTION_WORDS, "from"].sort());
  });

  it.each(Object.entries(OPTION_HELP))("%s: the example uses the word and is right", (word, { example }) => {
    expect(example.split(/[^a-z]+/)).toContain(word);
    const isStep = STEP_WORDS.some((step) => example.startsWith(`${step} `));
    expect(mistakes(isStep ? inPath(example) : fileWith(example))).toEqual([]);
  });
});

describe("functions", () => {
  it.each(FUNCTION_NAMES)(
    "%s: as many arguments as its rule takes, and an example that has a value",
    (name) => {
      const { parameters, takesMore, example } = FUNCTION_HELP[name];
      const rule = functionRule(name);
      expect(parameters.length).toBeGreaterThanOrEqual(rule?.least ?? 0);
      expect(takesMore ? Number.POSITIVE_INFINITY : parameters.length).toBeGreaterThanOrEqual(
        Math.min(rule?.most ?? 0, 2),
      );
      expect(takesMore).toBe((rule?.most ?? 0) > 2);
      expect(mistakes(fileWith(`let a = ${example}`))).toEqual([]);
      expect(analyse(readSource(`let a = ${example}`)).design.lets[0]?.value).not.toBeNull();
    },
  );

  it("pi too", () => {
    expect(mistakes(fileWith(PI_HELP.example))).toEqual([]);
  });
});

describe("forms", () => {
  const examples = [
    ...STATEMENT_WORDS.map((word) => STATEMENT_HELP[word].example),
    ...Object.values(OPTION_HELP).map(({ example }) => example),
  ].filter((example) => !STEP_WORDS.some((step) => example.startsWith(`${step} `) || example === step));

  it.each(examples)("fit every example to its end: %s", (example) => {
    // What stands in a block is not part of the statement's own form.
    const head = example.replace(/\{.*$/, "");
    const text = fileWith("").replace(/^/, `${head} `);
    const analysis = analyse(readSource(text));
    expect(signatureAt(analysis, head.trimEnd().length + 1)).not.toBeNull();
  });

  it("fit every snippet of a step to its end", () => {
    for (const word of STEP_WORDS) {
      for (const { template } of STEP_HELP[word].snippets) {
        const text = `outline { from (0 mm, 0 mm)\n${filledTemplate(template)} `;
        const labels = completionsAt(analyse(readSource(text)), text.length).map(({ label }) => label);
        expect(labels, template).toContain("close");
      }
    }
  });
});
