/** The outlines that independent readers measure: some by hand, for what random ones seldom are, and sixty at random. */
import fc from "fast-check";
import type { Outline } from "../../geometry/outline/segment.ts";
import { annulus, bulgeLoop, circle, outlineOf, rectangle, sector, slot } from "../support/loops.ts";
import { soundOutline } from "../support/random-outlines.ts";

const oneTooth = outlineOf(
  bulgeLoop([
    [20, -24, 0],
    [124, -22, 0],
    [130, 0, 0],
    [104, 16, 0.11],
    [30, 24, 0],
    [-82, 24, 0.4142135623730951],
    [-96, 10, 0],
    [-96, -10, 0.4142135623730951],
    [-82, -24, 0],
  ]),
  circle(11),
  circle(3.25, [0, 17]),
  slot([-60, 0], [-48, 0], 8),
);

/** A round head and a round jaw, both over half a turn, one to the left and one to the right. */
const spanner = outlineOf(
  bulgeLoop([
    [20, -15, 2],
    [20, 15, 0],
    [-60, 15, 0],
    [-60, 8, -1.5],
    [-60, -8, 0],
    [-60, -15, 0],
  ]),
  circle(8, [31, 0]),
);

/** A wide circle taken out of a half disc. */
const crescent = outlineOf(
  bulgeLoop([
    [0, -50, 1],
    [0, 50, -0.3],
  ]),
);

const handMade: readonly (readonly [name: string, outline: Outline])[] = [
  ["a bar with one tooth", oneTooth],
  ["arcs over half a turn", spanner],
  ["a thin ring", annulus(60, 59)],
  ["a disc far off the axis", outlineOf(circle(5, [900, -400]))],
  ["a sector over half a turn", outlineOf(sector(44, 5))],
  [
    "a plate with slots",
    outlineOf(rectangle(-90, -30, 90, 30), slot([-60, -10], [-20, 15], 9), slot([30, 0], [70, 0], 12)),
  ],
  [
    "a lens of shallow arcs",
    outlineOf(
      bulgeLoop([
        [-80, 3, 0.01],
        [80, -3, 0.01],
      ]),
    ),
  ],
  ["a crescent", crescent],
];

const random = fc.sample(soundOutline, { seed: 60, numRuns: 60 });

export const SECTION_OUTLINES: readonly (readonly [name: string, outline: Outline])[] = [
  ...handMade,
  ...random.map((outline, i) => [`random ${i}`, outline] as const),
];
