/** Texts for property tests: anything, the language's own words in any order, and a good file with something wrong. */
import fc from "fast-check";
import { wordsOf } from "../../geometry/language/blocks/block-table.ts";
import { BLOCKS } from "../../geometry/language/blocks/blocks.ts";
import type { Token } from "../../geometry/language/token.ts";
import { tokenize } from "../../geometry/language/tokenize.ts";
import {
  FUNCTION_NAMES,
  OPTION_WORDS,
  STATEMENT_WORDS,
  STEP_WORDS,
  UNIT_NAMES,
} from "../../geometry/language/vocabulary.ts";

/** A good file that uses all of the language. */
export const GOOD_FILE = `bar "Wattlebird one-tooth"

thickness 12 mm
material wear_steel_450   # from the table
density 7850 kg/m^3
yield 1200 MPa
let reach = 130 mm   # to the tip
let tail = 96 mm from 80 mm to 120 mm
let waist = max(24 mm, reach / 6) + (1/4) in
outline repeat 2 {
  from (reach, 0 mm) bevel 1 mm
  line (reach - 6 mm, -22 mm)
  arc (20 mm, -waist) radius 160 mm turning right long   # bulges
  line (-tail, -waist) round 14 mm
  arc by (1 mm, 2 mm) about (0 mm, 0 mm) turning left
  spiral (40 mm @ 180 deg) turning left round round(2.4) * 1 mm
  arc (104 mm, 16 mm) through (70 mm, 26 mm)
  close
}
bore 22 mm
hole (0 mm,
  17 mm   # continued
) diameter 6.5 mm
hole ring 4 at radius 40 mm diameter 6.5 mm from 45 deg
slot (-60 mm, 0 mm) to (-48 mm, 0 mm) width 8 mm
cutout { from (-84 mm, -6 mm) line (-74 mm, -6 mm) line (-74 mm, 6 mm) close }
spin 4200 rpm ccw
approach 0.5 m/s to 6 m/s
target round 5 mm offset 12 mm
require mass <= 1.6 kg
require balance <= G6.3
require bite at 3 m/s >= 2 * -2^2 mm
balance by tail
aim most bite at 3 m/s and least mass keeping (balance <= G16,
  mass <= 1 kg) by tail
robot { mass 13.6 kg track 300 mm centre_height 70 mm axle_ahead 160 mm axle_height tail + 60 mm edge up
  centre_height_inverted 85 mm length 400 mm height 120 mm   # by its drawing
  rear_wheels 130 mm front_wheels 90 mm ground_speed 4 m/s spin_up 4 s bolts 6 }
opponent { mass 13.6 kg restitution 0.3 stands braced closing 3 m/s struck_at 60 mm contact_time 0.5 ms }
budget { limit 6 kg part "frame" 2.1 kg   # all of it
  part "wheel" (1/4) lb count 4 spare
  scale 5.87 kg
}
event {
  tip_speed <= 75 m/s bite at 3 m/s >= 1 mm   # the class
  measured_spin_down 42 s }
variant "long tail" { tail = 110 mm thickness 10 mm }
variant "short" {
  tail = 85 mm
}
`;

const SETTING_WORDS = Object.values(BLOCKS).flatMap((table) => [...wordsOf(table)]);
const WORDS = [
  ...STATEMENT_WORDS,
  ...SETTING_WORDS,
  ...STEP_WORDS,
  ...OPTION_WORDS,
  ...FUNCTION_NAMES,
  ...UNIT_NAMES,
];
const SIGNS = [...'(){},@=+-*/^<>#"', "<=", ">=", "\n", "\r\n", "\r", " ", "  ", "\t", "//"];
const OTHERS = [
  "12",
  "1,5",
  "1.2.3",
  "1e999",
  ".5",
  "G40",
  "G6.3",
  "reach",
  "x1",
  '"a"',
  "°",
  "µm",
  "²",
  "–",
  "“",
  "”",
];
const ODD = ["\0", "\ufeff", "\ud800", "\udc00", "\u200b", "\u00a0", "\u2028", "ä", "[", ";", "§"];

/** Any UTF-16 units, halves of surrogate pairs included. */
export const anyText: fc.Arbitrary<string> = fc
  .array(fc.oneof(fc.integer({ min: 0, max: 127 }), fc.integer({ min: 0, max: 0xffff })), { maxLength: 200 })
  .map((units) => String.fromCharCode(...units));

const piece = fc.oneof(
  { arbitrary: fc.constantFrom(...WORDS), weight: 4 },
  { arbitrary: fc.constantFrom(...SIGNS), weight: 5 },
  { arbitrary: fc.constantFrom(...OTHERS), weight: 3 },
  { arbitrary: fc.constantFrom(...ODD), weight: 1 },
);

/** Words and signs of the language in any order, some glued together. */
export const wordText: fc.Arbitrary<string> = fc
  .array(fc.tuple(piece, fc.constantFrom("", " ", " ", "\n")), { maxLength: 80 })
  .map((parts) => parts.flat().join(""));

const GOOD_TOKENS: readonly Token[] = tokenize(GOOD_FILE);

interface Change {
  readonly at: number;
  readonly kind: "drop" | "double" | "put" | "cut";
  readonly what: string;
}

const change: fc.Arbitrary<Change> = fc.record({
  at: fc.nat(GOOD_TOKENS.length - 1),
  kind: fc.constantFrom("drop", "double", "put", "cut"),
  what: piece,
});

/** The good file with one to four tokens left out, doubled, replaced or cut in two. */
export const mutatedText: fc.Arbitrary<string> = fc
  .array(change, { minLength: 1, maxLength: 4 })
  .map((changes) => {
    const pieces = GOOD_TOKENS.map((token) => token.text);
    for (const { at, kind, what } of changes) {
      pieces[at] = changed(pieces[at] ?? "", kind, what);
    }
    return pieces.join("");
  });

function changed(text: string, kind: Change["kind"], what: string): string {
  switch (kind) {
    case "drop":
      return "";
    case "double":
      return `${text} ${text}`;
    case "put":
      return what;
    case "cut":
      return `${text.slice(0, 1)} ${text.slice(1)}`;
  }
}

export const roughText: fc.Arbitrary<string> = fc.oneof(anyText, wordText, mutatedText);
