/** Bars with one tooth and a counterweight, at random, that a known tail and lower edge balance exactly. */
import { polygonArea, polygonCentroid } from "d3-polygon";
import fc from "fast-check";

export interface Lengths {
  readonly reach: number;
  readonly face: number;
  readonly waist: number;
  readonly upper: number;
}

/** All in mm, but for the spin. */
export interface OneToothBar extends Lengths {
  /** The solution. */
  readonly tail: number;
  readonly lower: number;
  /** Where the search starts, as shares of the bounds. */
  readonly startTail: number;
  readonly startLower: number;
  readonly rpm: number;
  readonly inch: boolean;
  readonly grade: number;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const oneToothBar: fc.Arbitrary<OneToothBar> = fc.record({
  reach: between(110, 140),
  face: between(30, 45),
  waist: between(23, 28),
  upper: between(32, 42),
  tail: between(82, 98),
  lower: between(30, 38),
  startTail: between(0, 1),
  startLower: between(0, 1),
  rpm: between(1000, 9000),
  inch: fc.boolean(),
  grade: fc.constantFrom(2.5, 6.3, 16, 40),
});

export const TAIL_BOUNDS = [-20, 15] as const;
export const LOWER_BOUNDS = [-6, 14] as const;

/** The corners as they are before the shift. */
export function cornersOf(
  { reach, face, waist, upper }: Lengths,
  tail: number,
  lower: number,
): [number, number][] {
  return [
    [reach, 2],
    [reach - face, 5],
    [reach - face - 8, waist],
    [-18, waist],
    [-36, upper],
    [-tail, upper],
    [-tail, -lower],
    [-36, -lower],
    [-18, -waist],
    [reach - 16, -waist],
  ];
}

export const BORE_MM = 20;

/** The centroid of the bar less its bore on the axis, the whole outline shifted, by d3-polygon. */
export function centroidByD3(
  bar: OneToothBar,
  tail: number,
  lower: number,
  [dx, dy]: readonly [number, number],
): readonly [number, number] {
  const corners = cornersOf(bar, tail, lower).map(([x, y]): [number, number] => [x + dx, y + dy]);
  const area = Math.abs(polygonArea(corners));
  const [x, y] = polygonCentroid(corners);
  const left = area - (Math.PI * BORE_MM ** 2) / 4;
  return [(area * x) / left, (area * y) / left];
}

/** What brings the centroid of the bar with its known tail and lower edge to the axis. */
export function shiftOf(bar: OneToothBar): readonly [number, number] {
  const [x, y] = polygonCentroid(cornersOf(bar, bar.tail, bar.lower));
  return [-x, -y];
}

/**
 * The file of such a bar, off balance: tail and lower edge stand where the search starts.
 * @param bounds of tail and lower edge, from their solution
 */
export function fileOf(
  bar: OneToothBar,
  [tailBounds, lowerBounds]: readonly [readonly [number, number], readonly [number, number]] = [
    TAIL_BOUNDS,
    LOWER_BOUNDS,
  ],
): string {
  const [perUnit, unit, digits] = bar.inch ? ([25.4, "in", 8] as const) : ([1, "mm", 7] as const);
  const size = (mm: number) => `${(mm / perUnit).toFixed(digits)} ${unit}`;
  const start = (middle: number, [from, to]: readonly [number, number], share: number) =>
    `${size(middle + from + (to - from) * share)} from ${size(middle + from)} to ${size(middle + to)}`;
  const [dx, dy] = shiftOf(bar);
  return [
    'bar "One tooth"  # at random',
    "thickness 5 mm",
    "material wear_steel_450",
    `let reach = ${size(bar.reach)}`,
    `let face = ${size(bar.face)}`,
    `let waist = ${size(bar.waist)}`,
    `let upper = ${size(bar.upper)}`,
    `let tail = ${start(bar.tail, tailBounds, bar.startTail)}   # to be found`,
    `let lower =  ${start(bar.lower, lowerBounds, bar.startLower)}`,
    `let dx = ${size(dx)}`,
    `let dy = ${size(dy)}`,
    "outline {",
    "  from (reach + dx, 2 mm + dy)",
    "  line (reach - face + dx, 5 mm + dy)",
    "  line (reach - face - 8 mm + dx, waist + dy)",
    "  line (dx - 18 mm, waist + dy)",
    "  line (dx - 36 mm, upper + dy)",
    "  line (dx - tail, upper + dy)",
    "  line (dx - tail, dy - lower)",
    "  line (dx - 36 mm, dy - lower)",
    "  line (dx - 18 mm, dy - waist)",
    "  line (reach - 16 mm + dx, dy - waist)",
    "  close",
    "}",
    `bore ${BORE_MM} mm`,
    `spin ${bar.rpm} rpm ccw`,
    `require balance <= G${bar.grade}`,
    "",
  ].join("\n");
}
