import type { TextRange } from "../text.ts";
import type { AimGoal, AimStatement, FigureLimit } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { expectWord, expectWordBefore, takeOption, type WordChoice } from "./expect-word.ts";
import { fixOf, insertFix } from "./fixes.ts";
import { closeParenthesis } from "./parenthesis.ts";
import { noteAnd, parseLetName, takeNameSeparator } from "./parse-let-names.ts";
import { parseFigure, parseFigureLimit } from "./parse-require.ts";
import { STATEMENTS } from "./word-sets.ts";

const SENSE: WordChoice<AimGoal["sense"]> = {
  words: ["most", "least"],
  expected: "most or least and a figure, such as most inertia",
  aliases: {
    more: "most",
    max: "most",
    maximum: "most",
    highest: "most",
    largest: "most",
    deepest: "most",
    less: "least",
    min: "least",
    minimum: "least",
    lowest: "least",
    smallest: "least",
  },
};
const FIGURE = "a figure, such as inertia";
const LIMIT = "what is to be kept, such as mass <= 1.6 kg";
const BY = "by and the names of the lets that may be moved, such as by tail, waist";
const LIMITS_WITH_COMMA =
  "Two limits stand with a comma between them: keeping mass <= 1.6 kg, balance <= G16.";
const GOALS_WITH_AND = "Two goals stand with and between them: aim most inertia and least mass.";

/** Reads `GOAL [and GOAL] [keeping LIMIT, …] by NAME, …`; the lists of limits and names may stand in parentheses. */
export function parseAim(cursor: Cursor, keyword: TextRange): AimStatement {
  const goals = parseGoals(cursor);
  const isKeeping = takeOption(cursor, ["keeping"]) !== null;
  const limits = isKeeping ? parseList(cursor, parseLimit, takeLimitSeparator) : [];
  const isNext = () => cursor.at("word") || cursor.atSymbol("(");
  const isBy = expectWordBefore(cursor, "by", BY, {}, isNext);
  const names = isBy ? parseList(cursor, parseLetName, takeNext) : [];
  return { kind: "aim", keyword, goals, limits, names, range: cursor.rangeFrom(keyword.start) };
}

/** Reads a list that may stand in parentheses, in which it goes on over several lines. */
function parseList<T>(
  cursor: Cursor,
  parseItem: (cursor: Cursor) => T | null,
  takeSeparator: (cursor: Cursor) => boolean,
): readonly T[] {
  const open = cursor.range().start;
  const isOpen = cursor.takeSymbol("(");
  let isContinued = isOpen;
  const items: T[] = [];
  do {
    isContinued = noteContinued(cursor, open, isContinued);
    const item = parseItem(cursor);
    if (item !== null) {
      items.push(item);
    }
  } while (!cursor.panicking && takeSeparator(cursor));
  if (isOpen) {
    closeParenthesis(cursor, open);
  } else if (isContinued) {
    cursor.takeSymbol(")");
  }
  return items;
}

/** A comma at the end of a line: the list goes on below, and its parenthesis was forgotten. */
function noteContinued(cursor: Cursor, open: number, isContinued: boolean): boolean {
  if (isContinued || cursor.kind() !== "newline" || !isItemOn(cursor)) {
    return isContinued;
  }
  const range = { start: cursor.previousEnd - 1, end: cursor.previousEnd };
  const message = "A list that goes on on the next line stands in parentheses.";
  cursor.note("missing-brace", message, range, [insertFix(open, "(")]);
  cursor.skipNewlines();
  return true;
}

/** True where the next line starts with a figure or a name rather than with a statement. */
function isItemOn(cursor: Cursor): boolean {
  const isCompared = cursor.isSymbol("<=", 2) || cursor.isSymbol(">=", 2) || cursor.isSymbol(",", 2);
  return cursor.kind(1) === "word" && (isCompared || !STATEMENTS.has(cursor.text(1)));
}

/** How many goals make sense is left to the evaluation. */
function parseGoals(cursor: Cursor): readonly AimGoal[] {
  const goals: AimGoal[] = [];
  do {
    const { start } = cursor.range();
    const sense = expectWord(cursor, SENSE);
    if (sense === null) {
      return goals;
    }
    const figure = parseFigure(cursor, FIGURE);
    goals.push({ sense, ...figure, range: cursor.rangeFrom(start) });
  } while (takeAnd(cursor));
  return goals;
}

function takeAnd(cursor: Cursor): boolean {
  if (!cursor.atSymbol(",")) {
    return cursor.takeWord("and");
  }
  const comma = cursor.take();
  const edit = { start: comma.start, end: comma.end, newText: " and" };
  cursor.note("unexpected-text", GOALS_WITH_AND, comma, [fixOf("Replace with 'and'", [edit])]);
  return true;
}

function parseLimit(cursor: Cursor): FigureLimit {
  return parseFigureLimit(cursor, LIMIT);
}

function takeLimitSeparator(cursor: Cursor): boolean {
  if (cursor.takeSymbol(",")) {
    return true;
  }
  if (!cursor.atWord("and")) {
    return false;
  }
  noteAnd(cursor, LIMITS_WITH_COMMA);
  return true;
}

function takeNext(cursor: Cursor): boolean {
  return takeNameSeparator(cursor, "by tail, waist");
}
