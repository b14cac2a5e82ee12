/** The statements that say one thing about the bar. They stand at the top of a file and, as overrides, in variants. */
import type { TextRange } from "../text.ts";
import type {
  ApproachStatement,
  MaterialStatement,
  SpinDirection,
  Statement,
  TargetStatement,
} from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { expectWord, expectWordBefore, takeOption, type WordChoice } from "./expect-word.ts";
import { failMissing } from "./fail-missing.ts";
import { replaceFix } from "./fixes.ts";
import { parseExpression } from "./parse-expression.ts";

const QUANTITIES = {
  thickness: "a thickness such as 12 mm",
  density: "a density such as 7850 kg/m^3",
  yield: "a yield strength such as 1200 MPa",
  bore: "a diameter such as 22 mm",
} as const;

export const SETTING_WORDS = [
  "thickness",
  "material",
  "density",
  "yield",
  "bore",
  "spin",
  "approach",
  "target",
] as const;
export type SettingWord = (typeof SETTING_WORDS)[number];

const SPIN_DIRECTION: WordChoice<SpinDirection> = {
  words: ["ccw", "cw"],
  expected: "the direction of the spin as drawn: ccw or cw",
  aliases: { counterclockwise: "ccw", anticlockwise: "ccw", left: "ccw", clockwise: "cw", right: "cw" },
  whole: ["ccw", "cw"],
};

const TARGET_SHAPE: WordChoice<"edge" | "face" | "round"> = {
  words: ["edge", "face", "round"],
  expected: "what the bar meets: edge, face or round 5 mm",
  whole: ["edge", "face"],
};

const CLOSING_SPEED = "a closing speed such as 6 m/s";

export function isSettingWord(word: string): word is SettingWord {
  return SETTING_WORDS.some((setting) => setting === word);
}

/** Reads a setting from behind its word, which stood at `keyword`. */
export function parseSetting(cursor: Cursor, word: SettingWord, keyword: TextRange): Statement {
  skipEquals(cursor, word);
  switch (word) {
    case "thickness":
    case "density":
    case "yield":
    case "bore": {
      const value = parseExpression(cursor, QUANTITIES[word]);
      return { kind: word, keyword, value, range: cursor.rangeFrom(keyword.start) };
    }
    case "material":
      return parseMaterial(cursor, keyword);
    case "spin": {
      const speed = parseExpression(cursor, "a speed such as 4200 rpm");
      const direction = expectWord(cursor, SPIN_DIRECTION);
      return { kind: "spin", keyword, speed, direction, range: cursor.rangeFrom(keyword.start) };
    }
    case "approach":
      return parseApproach(cursor, keyword);
    case "target":
      return parseTarget(cursor, keyword);
  }
}

function parseMaterial(cursor: Cursor, keyword: TextRange): MaterialStatement {
  const expected = "a material such as wear_steel_450";
  if (!cursor.at("word")) {
    if (cursor.at("string")) {
      failQuotedMaterial(cursor);
    } else {
      failMissing(cursor, expected);
    }
    return { kind: "material", keyword, name: null, range: cursor.rangeFrom(keyword.start) };
  }
  const name = { name: cursor.text(), range: cursor.take() };
  return { kind: "material", keyword, name, range: cursor.rangeFrom(keyword.start) };
}

function failQuotedMaterial(cursor: Cursor): void {
  const plain = cursor
    .text()
    .replace(/^"|"$/g, "")
    .replace(/[^\p{L}\p{N}]+/gu, "_");
  const message = "A material is one word without quotation marks, such as wear_steel_450.";
  cursor.fail("unexpected-text", message, cursor.range(), [replaceFix(cursor.range(), plain)]);
}

function parseApproach(cursor: Cursor, keyword: TextRange): ApproachStatement {
  const from = parseExpression(cursor, "a closing speed such as 0.5 m/s");
  const to = expectTo(cursor, "to 6 m/s") ? parseExpression(cursor, CLOSING_SPEED) : null;
  return { kind: "approach", keyword, from, to, range: cursor.rangeFrom(keyword.start) };
}

/** Takes the `to` between the ends of a range or of a slot. */
export function expectTo(cursor: Cursor, example: string): boolean {
  return expectWordBefore(cursor, "to", `the other end: ${example}`);
}

function parseTarget(cursor: Cursor, keyword: TextRange): TargetStatement {
  const shape = expectWord(cursor, TARGET_SHAPE);
  const radius = shape === "round" ? parseExpression(cursor, "a radius such as 5 mm") : null;
  const hasOffset = takeOption(cursor, ["offset"]) !== null;
  const offset = hasOffset ? parseExpression(cursor, "an offset such as 12 mm") : null;
  return { kind: "target", keyword, shape, radius, offset, range: cursor.rangeFrom(keyword.start) };
}

/** `thickness = 12 mm`: only lets have the sign. */
export function skipEquals(cursor: Cursor, word: string): void {
  if (cursor.atSymbol("=")) {
    const range = cursor.range();
    const message = `A line that starts with ${word} has no = in it.`;
    cursor.note("unexpected-text", message, range, cursor.removal(range, true));
    cursor.take();
  }
}
