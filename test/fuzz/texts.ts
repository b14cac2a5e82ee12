/** Texts to break the tool with: of any characters, of the language's words, and good files with other numbers in them. */
import fc from "fast-check";
import { tokenize } from "../../geometry/language/tokenize.ts";
import { roughText } from "../language/syntax-texts.ts";
import { SAMPLES } from "../samples/samples.ts";

/** Where geometry and arithmetic have their edges. */
const NUMBERS = [
  "0",
  "-0",
  "1",
  "-1",
  "1e-12",
  "1e-300",
  "1e12",
  "1e300",
  "1e999",
  "0.1",
  "90",
  "180",
  "360",
  "359.9999999999",
  "12.7",
  "999999999999999999999",
];

const other = fc.oneof(
  fc.constantFrom(...NUMBERS),
  fc.double({ min: -400, max: 400, noNaN: true }).map((value) => value.toPrecision(6)),
  fc.integer({ min: -20, max: 400 }).map(String),
);

/** How another number comes about: of its own, or the old one moved a little or a lot. */
const change = fc.oneof(
  other.map((text) => () => text),
  fc.double({ min: -3, max: 3, noNaN: true }).map((factor) => (text: string) => numberText(text, factor, 0)),
  fc.constantFrom(1e-9, -1e-9, 1e-6, 0.01, -0.01).map((by) => (text: string) => numberText(text, 1, by)),
);

function numberText(text: string, factor: number, by: number): string {
  const value = Number(text) * factor + by;
  return Number.isFinite(value) ? String(value) : "0";
}

/** A sample with one to six of its numbers changed. */
export const shakenText: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom(...SAMPLES.map(({ text }) => text)),
    fc.array(fc.tuple(fc.nat(), change), { minLength: 1, maxLength: 6 }),
  )
  .map(([text, changes]) => {
    const pieces = tokenize(text).map((token) => token.text);
    const numbers = pieces.flatMap((piece, i) => (/^[\d.]+$/.test(piece) ? [i] : []));
    for (const [pick, changed] of changes) {
      const at = numbers[pick % numbers.length];
      if (at !== undefined) pieces[at] = changed(pieces[at] ?? "0");
    }
    return pieces.join("");
  });

export const breakingText: fc.Arbitrary<string> = fc.oneof(
  { arbitrary: shakenText, weight: 3 },
  { arbitrary: roughText, weight: 2 },
);
