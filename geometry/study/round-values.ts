import type { MovableLet } from "./movable-let.ts";

/** What a shop measures: a hundredth of a millimetre, in inches a thousandth; a hundredth of a degree. */
const METRIC_STEP_MM = 0.01;
const INCH_STEP_MM = 0.0254;
const ANGLE_STEP_RAD = (0.01 * Math.PI) / 180;
/** Of anything else, this share of its bounds. */
const OTHER_STEP = 1e-4;
const INCH_UNITS: readonly (string | null)[] = ["in", "thou", "ft"];

/** How many decimals of its own unit a let is written with, to be as fine as a shop measures. */
export function shopDecimals({ unit, scale, least, most }: MovableLet): number {
  const { length, angle } = scale.dimension;
  const isLength = length === 1 && angle === 0;
  const lengthStep = INCH_UNITS.includes(unit) ? INCH_STEP_MM : METRIC_STEP_MM;
  const step = isLength ? lengthStep / scale.factor : angle === 1 ? ANGLE_STEP_RAD / scale.factor : null;
  // A step of exactly a power of ten comes out a hair off it.
  const digits = Math.ceil(-Math.log10(step ?? OTHER_STEP * (most - least)) - 1e-9);
  return Math.min(Math.max(digits, 0), 12);
}

/** The one or two numbers of so many decimals next to a value, within the let's bounds; the nearer one first. */
export function neighbours({ least, most }: MovableLet, value: number, decimals: number): readonly number[] {
  const step = 10 ** decimals;
  const numbers = [Math.floor(value * step), Math.ceil(value * step)]
    .map((whole) => Number((whole / step).toFixed(decimals)))
    .filter((rounded) => least <= rounded && rounded <= most);
  return numbers.sort((a, b) => Math.abs(a - value) - Math.abs(b - value));
}

/** Every choice of one value from each list. */
export function combinations(lists: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return lists.reduce<readonly (readonly number[])[]>(
    (done, list) => done.flatMap((chosen) => list.map((value) => [...chosen, value])),
    [[]],
  );
}
