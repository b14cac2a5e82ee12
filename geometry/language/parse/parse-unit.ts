import type { Fix } from "../problem.ts";
import type { TextRange } from "../text.ts";
import type { UnitExpression, UnitFactor } from "../tree.ts";
import type { Cursor } from "./cursor.ts";
import { deleteFix, fixOf, insertFix, insertion, replaceFix } from "./fixes.ts";
import { gluedPower, type Spelling, unitSpelling } from "./unit-spelling.ts";
import { FUNCTIONS, KEYWORDS, UNITS } from "./word-sets.ts";

const UNITS_AND_KEYWORDS: readonly string[] = [...UNITS, ...KEYWORDS];

/** No physical unit has a higher power. */
const HIGHEST_POWER = 9;

/** A factor as read; `isKnown` is false for a word that is no unit, which has been reported. */
interface ReadFactor {
  readonly factors: readonly UnitFactor[];
  readonly isKnown: boolean;
}

/** What stands behind a value: a unit, nothing, or a word that is no unit (reported). */
export type UnitBehind = UnitExpression | null | "unknown";

/** True where the word `ahead` is a unit and not the function of the same name, `min(`. */
export function isUnitAt(cursor: Cursor, ahead = 0): boolean {
  if (cursor.kind(ahead) !== "word" || !UNITS.has(cursor.text(ahead))) {
    return false;
  }
  const isCall = FUNCTIONS.has(cursor.text(ahead)) && cursor.isSymbol("(", ahead + 1);
  return !isCall && !cursor.isSymbol("=", ahead + 1);
}

/** Reads the unit behind a value that starts at `valueStart`, if there is one. */
export function parseUnitBehind(cursor: Cursor, valueStart: number): UnitBehind {
  if (!cursor.at("word")) {
    return null;
  }
  if (isUnitAt(cursor)) {
    return parseUnit(cursor, valueStart);
  }
  return isMeantAsUnit(cursor) ? parseUnit(cursor, valueStart) : null;
}

/** A word behind a value that is no keyword, no call and no override can only have been meant as its unit. */
function isMeantAsUnit(cursor: Cursor): boolean {
  const word = cursor.text();
  const isCompared = cursor.isSymbol("<=", 1) || cursor.isSymbol(">=", 1);
  if (cursor.isKeyword(word) || isCompared || cursor.isSymbol("=", 1) || cursor.isSymbol("(", 1)) {
    return false;
  }
  const near = spellingAt(cursor)?.isSure
    ? null
    : cursor.suggest(word, [...UNITS_AND_KEYWORDS, ...cursor.blockWords]);
  return near === null || UNITS.has(near);
}

function spellingAt(cursor: Cursor): Spelling | null {
  return cursor.isFull ? null : unitSpelling(cursor.text());
}

/** `kg/m^3`: factors joined by `*` and `/` as long as a unit follows. */
function parseUnit(cursor: Cursor, valueStart: number): UnitBehind {
  const { start } = cursor.range();
  const read = [parseFactor(cursor, 1, valueStart)];
  for (;;) {
    if (isContinued(cursor)) {
      const sign = cursor.isSymbol("/") ? -1 : 1;
      cursor.take();
      read.push(parseFactor(cursor, sign, valueStart));
    } else if (!cursor.panicking && isUnitAt(cursor)) {
      read.push(parseSecondUnit(cursor, valueStart));
    } else {
      break;
    }
  }
  if (read.some((factor) => !factor.isKnown)) {
    return "unknown";
  }
  const [only] = read;
  const factors = read.length === 1 && only ? only.factors : read.flatMap((factor) => factor.factors);
  return { text: unitText(factors), factors, range: cursor.rangeFrom(start) };
}

/** `5 mm mm` or `5 N m`: the same unit again is left out, another is taken as multiplied. */
function parseSecondUnit(cursor: Cursor, valueStart: number): ReadFactor {
  const range = cursor.range();
  const gap = { start: cursor.previousEnd, end: range.start };
  const isRepeated = cursor.isWord(cursor.text(), -1);
  const fix = isRepeated
    ? deleteFix(cursor.table.source, range)
    : fixOf("Insert '*'", [{ ...gap, newText: "*" }]);
  const message = "Units are joined with * or /, as in N*m.";
  cursor.note("unexpected-text", isRepeated ? "The unit stands here twice." : message, range, [fix]);
  const factor = parseFactor(cursor, 1, valueStart);
  return isRepeated ? { factors: [], isKnown: true } : factor;
}

function isContinued(cursor: Cursor): boolean {
  if (!cursor.atSymbol("*") && !cursor.atSymbol("/")) {
    return false;
  }
  return isUnitAt(cursor, 1) || isGluedPowerAt(cursor, 1);
}

/** `kg/m3`: read as a unit unless a let has that name. */
function isGluedPowerAt(cursor: Cursor, ahead: number): boolean {
  const word = cursor.text(ahead);
  const isFree = cursor.kind(ahead) === "word" && !cursor.table.letNames.has(word);
  return isFree && gluedPower(word) !== null;
}

function parseFactor(cursor: Cursor, sign: 1 | -1, valueStart: number): ReadFactor {
  const { start } = cursor.range();
  const name = cursor.text();
  if (!UNITS.has(name)) {
    return parseUnknownFactor(cursor, sign);
  }
  cursor.take();
  const exponent = sign * parsePower(cursor, valueStart);
  return { factors: [{ name, exponent, range: cursor.rangeFrom(start) }], isKnown: true };
}

function parsePower(cursor: Cursor, valueStart: number): number {
  if (!cursor.atSymbol("^")) {
    return 1;
  }
  const isNegative = cursor.isSymbol("-", 1);
  const ahead = isNegative ? 2 : 1;
  const power = cursor.kind(ahead) === "number" ? Number(cursor.text(ahead)) : Number.NaN;
  if (!Number.isInteger(power) || power > HIGHEST_POWER) {
    reportPower(cursor, valueStart);
    return 1;
  }
  for (let i = 0; i <= ahead; i += 1) {
    cursor.take();
  }
  return isNegative ? -power : power;
}

/** `5 mm^x`: a value raised to a power needs parentheses, because `^` behind a unit belongs to the unit. */
function reportPower(cursor: Cursor, valueStart: number): void {
  const edits = [insertion(valueStart, "("), insertion(cursor.previousEnd, ")")];
  cursor.guess(
    "unexpected-text",
    `The power of a unit is a whole number up to ${HIGHEST_POWER}, as in mm^2; to raise the value itself put it in parentheses.`,
    cursor.range(),
    [fixOf("Put the value in parentheses", edits)],
  );
}

function parseUnknownFactor(cursor: Cursor, sign: 1 | -1): ReadFactor {
  const word = cursor.text();
  const spelling = spellingAt(cursor);
  const place = cursor.range();
  const message = unknownUnitMessage(cursor, word, spelling?.unit);
  cursor.note("unknown-unit", message, place, unknownUnitFixes(cursor, spelling));
  cursor.take();
  if (spelling === null) {
    return { factors: [], isKnown: false };
  }
  return { factors: factorsOf(spelling.unit, sign, place), isKnown: true };
}

function unknownUnitMessage(cursor: Cursor, word: string, meant: string | undefined): string {
  if (cursor.table.letNames.has(word)) {
    return `'${word}' is a let, not a unit; to multiply, write * before it.`;
  }
  const hint =
    meant === undefined ? "units are mm, in, kg, deg, rpm, m/s and so on." : `did you mean ${meant}?`;
  return `'${word}' is not a unit; ${hint}`;
}

function unknownUnitFixes(cursor: Cursor, spelling: Spelling | null): readonly Fix[] {
  if (cursor.table.letNames.has(cursor.text())) {
    return [insertFix(cursor.range().start, "* ")];
  }
  return spelling === null ? [] : [replaceFix(cursor.range(), spelling.unit, spelling.isSure)];
}

/** The factors of a unit text of ours, such as `N*m`; all at the place of the word it stands for. */
function factorsOf(unit: string, sign: 1 | -1, range: TextRange): readonly UnitFactor[] {
  return unit.split(/(?=[*/])/).map((part) => {
    const [name = "", power = "1"] = part.replace(/^[*/]/, "").split("^");
    const exponent = sign * (part.startsWith("/") ? -1 : 1) * Number(power);
    return { name, exponent, range };
  });
}

/** A unit as it is best written: `kg/m^3`. A unit that only divides keeps its negative power: `s^-1`. */
function unitText(factors: readonly UnitFactor[]): string {
  const [first] = factors;
  // Nearly every unit of a bar is one word: no text is to be made for it.
  if (first !== undefined && factors.length === 1 && first.exponent === 1) return first.name;
  return factors
    .map(({ name, exponent }, i) => {
      const isBelow = i > 0 && exponent < 0;
      const power = isBelow ? -exponent : exponent;
      const sign = i === 0 ? "" : isBelow ? "/" : "*";
      return `${sign}${name}${power === 1 ? "" : `^${power}`}`;
    })
    .join("");
}
