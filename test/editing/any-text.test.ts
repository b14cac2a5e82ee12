/** Whatever a text says and wherever the cursor stands: no feature throws, and every range lies in the text. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { analyse, checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import {
  completionsAt,
  definitionAt,
  fixesAt,
  foldingRanges,
  handles,
  hoverAt,
  inlayHints,
  lenses,
  movePoint,
  referencesAt,
  renameEdits,
  renameTarget,
  safeFixes,
  selectionRanges,
  semanticTokens,
  signatureAt,
  symbols,
} from "../../geometry/editing/editing.ts";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import type { TextRange } from "../../geometry/language/text.ts";
import {
  FUNCTION_NAMES,
  OPTION_WORDS,
  STATEMENT_WORDS,
  STEP_WORDS,
  UNIT_NAMES,
} from "../../geometry/language/vocabulary.ts";
import { withCrLf } from "./cursor-text.ts";
import { SAMPLES } from "./samples.ts";

function lies(text: string, range: TextRange): void {
  expect(0 <= range.start && range.start <= range.end && range.end <= text.length).toBe(true);
}

function checkPlaces(text: string, offsets: readonly number[]): void {
  const source = readSource(text);
  const analysis = analyse(source, { variant: source.variants[0] ?? null });
  for (const offset of offsets) {
    const ranges = [
      ...completionsAt(analysis, offset).map(({ range }) => range),
      hoverAt(analysis, offset)?.range,
      definitionAt(source, offset)?.name,
      ...referencesAt(source, offset, { includeDeclaration: true }),
      ...selectionRanges(source, offset),
    ];
    for (const range of ranges) if (range) lies(text, range);
    const signature = signatureAt(analysis, offset);
    for (const { start, end } of signature?.parameters ?? []) lies(signature?.label ?? "", { start, end });
    const target = renameTarget(source, offset);
    const renamed = renameEdits(source, offset, "another_name");
    expect("refused" in target).toBe("refused" in renamed);
    if ("edits" in renamed) applyEdits(text, renamed.edits);
  }
}

function checkWhole(text: string): void {
  const source = readSource(text);
  const analysis = analyse(source);
  const whole = { start: 0, end: text.length };
  for (const { offset } of inlayHints(analysis, whole)) lies(text, { start: offset, end: offset });
  for (const { range } of [
    ...lenses(source),
    ...symbols(source),
    ...foldingRanges(source),
    ...semanticTokens(source),
  ])
    lies(text, range);
  const problems = checkSource(source);
  applyEdits(text, safeFixes(problems));
  expect(fixesAt(problems, whole).length).toBe(problems.flatMap(({ fixes }) => fixes).length);
  for (const { id, source: range } of handles(analysis)) {
    lies(text, range);
    const moved = movePoint(analysis, id, { x: 12.3, y: -4.5 });
    if ("edits" in moved) applyEdits(text, moved.edits);
  }
}

const SEED = 1_618;

const token = fc.oneof(
  fc.constantFrom(...STATEMENT_WORDS, ...STEP_WORDS, ...OPTION_WORDS, ...FUNCTION_NAMES, ...UNIT_NAMES),
  fc.constantFrom(..."reach tail pi mass balance bite wear_steel_450 G40 x y".split(" ")),
  fc.constantFrom(
    "0",
    "1",
    "-3",
    "12 mm",
    "0.5 in",
    "1e308",
    "45 deg",
    "4200 rpm",
    "(1 mm, 2 mm)",
    "by (1 mm, 2 mm)",
    "let a = ",
  ),
  fc.constantFrom(
    ...'( ) { } , @ = + - * / ^ <= >= # // "x" " \u2212 \u00b0 \u{1d4d0} \t'.split(" "),
    "\n",
    "\n",
    "\r\n",
    "\r",
  ),
);
const soup = fc.array(token, { maxLength: 50 }).map((tokens) => tokens.join(" "));

/** A sample with pieces taken out, doubled or put elsewhere. */
const mutated = fc
  .tuple(
    fc.constantFrom(...SAMPLES),
    fc.array(fc.tuple(fc.nat(), fc.nat(30), fc.oneof(fc.constant(""), token)), {
      minLength: 1,
      maxLength: 4,
    }),
    fc.boolean(),
  )
  .map(([sample, cuts, isCrLf]) => {
    const text = cuts.reduce((before, [at, length, insert]) => {
      const start = at % (before.length + 1);
      return before.slice(0, start) + insert + before.slice(start + length);
    }, sample);
    return isCrLf ? withCrLf(text) : text;
  });

/** Some offsets of a text, both ends among them. */
function offsetsOf(text: string, picks: readonly number[]): readonly number[] {
  return [0, text.length, ...picks.map((pick) => pick % (text.length + 1))];
}

describe("no feature throws", () => {
  const picks = fc.array(fc.nat(), { minLength: 6, maxLength: 6 });

  it("at any offset of any mixture of the words of the language", () => {
    fc.assert(
      fc.property(soup, picks, (text, some) => {
        checkPlaces(text, offsetsOf(text, some));
        checkWhole(text);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("at any offset of samples that are broken in any way", () => {
    fc.assert(
      fc.property(mutated, picks, (text, some) => {
        checkPlaces(text, offsetsOf(text, some));
        checkWhole(text);
      }),
      { seed: SEED, numRuns: 80 },
    );
  });

  it("at any offset of any characters", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), picks, (text, some) => {
        checkPlaces(text, offsetsOf(text, some));
        checkWhole(text);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it("at every offset of one sample, and outside it", () => {
    const [text = ""] = SAMPLES;
    checkPlaces(
      text,
      Array.from({ length: text.length + 1 }, (_, offset) => offset).filter((offset) => offset % 2 === 0),
    );
    checkPlaces(text, [-5, text.length + 5]);
  });

  it("on empty and very short texts", () => {
    for (const text of [
      "",
      "\n",
      "\r\n",
      "(",
      "{",
      "}",
      '"',
      "#",
      "let",
      "let a",
      "variant",
      "outline {",
      "by",
      "1",
      "1 ",
      "\ufeff",
    ]) {
      checkPlaces(text, [0, text.length]);
      checkWhole(text);
    }
  });
});
