/** Writing another value in place of a number of the text: in its unit, with the digits a person would write. */
import { fixed } from "../../figures/present.ts";
import { unitWithGap } from "../../language/evaluate/expression-shape.ts";
import type { TextEdit } from "../../language/text.ts";
import { unitFactor } from "../../language/units.ts";
import type { SignPlace, WrittenNumber } from "./driving-number.ts";

/**
 * Decimals in which a dragged value is written: 0.01 mm or 0.001 in, and for an angle 0.01 deg, which is 0.02 mm at a
 * radius of 120 mm. What is finer is no longer aimed at by hand.
 */
const DECIMALS: Readonly<Record<string, number>> = {
  um: 0,
  mm: 2,
  cm: 3,
  m: 5,
  km: 8,
  thou: 0,
  in: 3,
  ft: 4,
  deg: 2,
  rad: 4,
  turn: 5,
};

/** Units that are built from others are rare enough to be written to many digits. */
const OTHER_DECIMALS = 6;

export interface Rewriting {
  readonly edits: readonly TextEdit[];
  /** What the number is worth then, in mm or rad. */
  readonly value: number;
}

/**
 * Gives a number another value, in mm or rad; null where its unit is none.
 * @param place where its sign stands, so that a number that changes sides keeps a plain text: `- 6 mm`, `+ 4 mm`
 */
export function rewriteNumber(
  text: string,
  number: WrittenNumber,
  place: SignPlace,
  value: number,
): Rewriting | null {
  const scale = unitFactor(number.unit);
  if (scale === null) return null;
  const decimals = DECIMALS[number.unit.text] ?? OTHER_DECIMALS;
  const written = fixed(value / scale.factor, decimals);
  const isTurned = written.startsWith("-");
  const digits = isTurned ? written.slice(1) : written;
  const { start } = number.range;
  const edit = { start, end: unitWithGap(text, number.unit).start, newText: digits };
  const worth = Number(written) * scale.factor;
  if (!isTurned) return { edits: changed(text, [edit]), value: worth };
  if (place.kind === "none") return { edits: [{ ...edit, newText: `-${digits}` }], value: worth };
  return { edits: changed(text, [turnedSign(text, place), edit]), value: worth };
}

/** The edits that change something. */
function changed(text: string, edits: readonly TextEdit[]): readonly TextEdit[] {
  return edits.filter(({ start, end, newText }) => text.slice(start, end) !== newText);
}

/** The sign turned round; a minus that belongs to the number alone goes. */
function turnedSign(text: string, { kind, sign, range }: Exclude<SignPlace, { kind: "none" }>): TextEdit {
  if (kind === "own" && sign === "-") return { ...range, newText: "" };
  const at = signOffset(text, range.start, range.end, sign);
  return { start: at, end: at + 1, newText: sign === "-" ? "+" : "-" };
}

/** Where the sign stands among the blanks, parentheses and comments between two terms. */
function signOffset(text: string, start: number, end: number, sign: "+" | "-"): number {
  const between = text.slice(start, end).replace(/#[^\r\n]*/g, (comment) => " ".repeat(comment.length));
  return start + between.indexOf(sign);
}
