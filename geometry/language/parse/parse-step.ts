import type { TextRange } from "../text.ts";
import type { ArcShape, CornerTreatment, Step, Turning } from "../tree.ts";
import { STEP_WORDS } from "../vocabulary.ts";
import type { Cursor } from "./cursor.ts";
import { expectWord, takeOption, type WordChoice } from "./expect-word.ts";
import { insertFix } from "./fixes.ts";
import { parseExpression } from "./parse-expression.ts";
import { parsePoint } from "./parse-point.ts";

export type StepWord = (typeof STEP_WORDS)[number];

const RADIUS = "a radius such as 160 mm";

const TURNING: WordChoice<Turning> = {
  words: ["left", "right"],
  expected: "left (counter-clockwise) or right (clockwise)",
  aliases: { ccw: "left", counterclockwise: "left", cw: "right", clockwise: "right" },
  whole: ["left", "right"],
};

const ARC_SHAPE: WordChoice<"radius" | "through" | "about"> = {
  words: ["radius", "through", "about"],
  expected:
    "the run of the arc: radius 160 mm turning right, through (70 mm, 26 mm), or about (0 mm, 0 mm) turning left",
  aliases: { thru: "through", via: "through", around: "about", center: "about", centre: "about" },
};

export function isStepWord(word: string): word is StepWord {
  return STEP_WORDS.some((step) => step === word);
}

/** Reads a step from behind its word, which stood at `keyword`. */
export function parseStep(cursor: Cursor, word: StepWord, keyword: TextRange): Step {
  switch (word) {
    case "from":
    case "line": {
      const to = parsePoint(cursor);
      return { kind: word, to, ...parseStepEnd(cursor, keyword) };
    }
    case "arc": {
      const to = parsePoint(cursor);
      const shape = parseArcShape(cursor);
      return { kind: "arc", to, shape, ...parseStepEnd(cursor, keyword) };
    }
    case "spiral": {
      const to = parsePoint(cursor);
      const turning = parseTurning(cursor);
      return { kind: "spiral", to, turning, ...parseStepEnd(cursor, keyword) };
    }
    case "close":
      return { kind: "close", ...parseStepEnd(cursor, keyword) };
  }
}

function parseStepEnd(
  cursor: Cursor,
  keyword: TextRange,
): { keyword: TextRange; corner: CornerTreatment | null; range: TextRange } {
  const corner = parseCorner(cursor);
  return { keyword, corner, range: cursor.rangeFrom(keyword.start) };
}

function parseArcShape(cursor: Cursor): ArcShape | null {
  switch (expectWord(cursor, ARC_SHAPE)) {
    case "radius": {
      const radius = parseExpression(cursor, RADIUS);
      const turning = parseTurning(cursor);
      return { by: "radius", radius, turning, long: takeOption(cursor, ["long"]) !== null };
    }
    case "through":
      return { by: "through", through: parsePoint(cursor) };
    case "about": {
      const centre = parsePoint(cursor);
      return { by: "about", centre, turning: parseTurning(cursor) };
    }
    case null:
      return null;
  }
}

function parseTurning(cursor: Cursor): Turning | null {
  if (takeOption(cursor, ["turning"]) !== null) {
    return expectWord(cursor, TURNING);
  }
  if (cursor.atWord("left") || cursor.atWord("right")) {
    const range = cursor.range();
    const message = `The direction is written turning ${cursor.text()}.`;
    cursor.guess("missing-part", message, range, [insertFix(range.start, "turning ")]);
    return expectWord(cursor, TURNING);
  }
  if (!cursor.panicking) {
    failMissingTurning(cursor);
  }
  return null;
}

function failMissingTurning(cursor: Cursor): void {
  const fixes = TURNING.words.map((word) => insertFix(cursor.previousEnd, ` turning ${word}`));
  const message =
    "Expected the direction of the arc: turning left (counter-clockwise) or turning right (clockwise).";
  cursor.fail("missing-part", message, cursor.missingRange(), fixes);
}

function parseCorner(cursor: Cursor): CornerTreatment | null {
  const { start } = cursor.range();
  const kind = takeOption(cursor, ["round", "bevel"]);
  if (kind !== "round" && kind !== "bevel") {
    return null;
  }
  const expected = kind === "round" ? "a radius such as 5 mm" : "a bevel such as 3 mm";
  const size = parseExpression(cursor, expected);
  return { kind, size, range: cursor.rangeFrom(start) };
}
