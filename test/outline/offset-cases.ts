/** Outlines whose offset is not of the ordinary kind, each with the distances that make it so. */
import type { Loop } from "../../geometry/outline/segment.ts";
import {
  arc,
  type BulgeCorner,
  bulgeLoop,
  chain,
  line,
  loopOf,
  type Pair,
  polygon,
  rectangle,
} from "../support/loops.ts";

const quarter = Math.tan(Math.PI / 8);

/** A block with a slot from above, `widthMm` wide, that ends in a pocket of 40 by 20. */
export function pocketed(widthMm: number): Loop {
  const half = widthMm / 2;
  return polygon([
    [-50, -40],
    [50, -40],
    [50, 40],
    [half, 40],
    [half, 10],
    [20, 10],
    [20, -10],
    [-20, -10],
    [-20, 10],
    [-half, 10],
    [-half, 40],
    [-50, 40],
  ]);
}

/** A block with a slot from above, `widthMm` wide and 60 deep, with a round bottom or a flat one. */
export function slotted(widthMm: number, isRound: boolean): Loop {
  const half = widthMm / 2;
  const bottom: BulgeCorner[] = [
    [half, -20, isRound ? -1 : 0],
    [-half, -20, 0],
  ];
  return bulgeLoop([
    [-50, -40, 0],
    [50, -40, 0],
    [50, 40, 0],
    [half, 40, 0],
    ...bottom,
    [-half, 40, 0],
    [-50, 40, 0],
  ]);
}

/** A comb of equal teeth, as wide as the gaps between them. */
export function comb(teeth: number, pitchMm: number, heightMm: number): Loop {
  const points: Pair[] = [
    [0, -10],
    [(teeth - 0.5) * pitchMm, -10],
  ];
  for (let i = teeth - 1; i >= 0; i--) {
    points.push([(i + 0.5) * pitchMm, heightMm], [i * pitchMm, heightMm]);
    if (i > 0) points.push([i * pitchMm, 0], [(i - 0.5) * pitchMm, 0]);
  }
  return polygon(points);
}

/** A disc of several arcs about one centre. */
export function disc(radiusMm: number, arcs: number, centre: Pair = [0, 0]): Loop {
  const sweep = (2 * Math.PI) / arcs;
  return chain(Array.from({ length: arcs }, (_, i) => arc(centre, radiusMm, 0.3 + i * sweep, sweep)));
}

/** A polygon of many sides inside a circle, or the like as a round hollow in a block. */
export function manySided(radiusMm: number, sides: number): Loop {
  return polygon(
    Array.from({ length: sides }, (_, i): Pair => {
      const angle = (2 * Math.PI * i) / sides;
      return [radiusMm * Math.cos(angle), radiusMm * Math.sin(angle)];
    }),
  );
}

/** A block with a half-round hollow of many short sides from above. */
export function hollow(radiusMm: number, sides: number): Loop {
  const rim = Array.from({ length: sides + 1 }, (_, i): Pair => {
    const angle = (-Math.PI * i) / sides;
    return [radiusMm * Math.cos(angle), radiusMm * Math.sin(angle)];
  });
  return polygon([[-50, -50], [50, -50], [50, 0], ...rim, [-50, 0]]);
}

/** A keyhole: a round pocket that opens through a neck narrower than itself. */
export function keyhole(radiusMm: number, neckMm: number): Loop {
  const half = neckMm / 2;
  const depth = Math.sqrt(radiusMm ** 2 - half ** 2);
  const sweep = 2 * (Math.PI - Math.asin(half / radiusMm));
  return bulgeLoop([
    [-50, -50, 0],
    [50, -50, 0],
    [50, 50, 0],
    [half, 50, 0],
    [half, depth, -Math.tan(sweep / 4)],
    [-half, depth, 0],
    [-half, 50, 0],
    [-50, 50, 0],
  ]);
}

/** A spike between two arcs that meet in a cusp at the top: a convex corner of half a turn. */
export const cusp: Loop = bulgeLoop([
  [-30, 0, 0],
  [30, 0, -quarter],
  [0, 30, -quarter],
]);

/** A slit between two round lobes that touch in a cusp at its bottom: a concave corner of half a turn. */
export const slit: Loop = bulgeLoop([
  [-20, -20, 0],
  [20, -20, 0],
  [20, 0, quarter],
  [10, 10, quarter],
  [0, 0, quarter],
  [-10, 10, quarter],
  [-20, 0, 0],
]);

/** A hook that all but closes on itself. */
export const hook: Loop = bulgeLoop([
  [-10, -30, 0],
  [10, -30, 0],
  [10, 0, 0],
  [30, 0, 0.9],
  [20, 40, 0],
  [12, 36, 0],
  [12, 30, 0],
  [20, 33, -0.8],
  [24, 8, 0],
  [-10, 8, 0],
]);

/** A rectangle with extra corners along its sides. */
export const collinear: Loop = polygon([
  [-20, -10],
  [-7, -10],
  [1 / 3, -10],
  [20, -10],
  [20, 0.1],
  [20, 10],
  [-20, 10],
  [-20, 3],
]);

export interface OddCase {
  readonly name: string;
  readonly outer: Loop;
  readonly distancesMm: readonly number[];
}

const oddCases: readonly OddCase[] = [
  { name: "a slot exactly closed", outer: slotted(8, false), distancesMm: [4] },
  { name: "a round slot exactly closed", outer: slotted(8, true), distancesMm: [4] },
  { name: "a slot all but closed", outer: slotted(8, false), distancesMm: [3.999, 4.001] },
  { name: "a round slot all but closed", outer: slotted(8, true), distancesMm: [3.999, 4.001] },
  { name: "a neck exactly closed over a pocket", outer: pocketed(8), distancesMm: [4] },
  { name: "a neck over a pocket", outer: pocketed(8), distancesMm: [2, 3.999, 4.001, 9, 10, 11] },
  { name: "a keyhole", outer: keyhole(20, 10), distancesMm: [4, 5, 6, 20, 21] },
  { name: "a comb", outer: comb(12, 4, 7), distancesMm: [0.5, 0.999, 1, 1.001, 7, 50] },
  { name: "a disc of one arc", outer: loopOf([arc([3, 4], 20, 1, 2 * Math.PI)]), distancesMm: [7] },
  { name: "a disc of two arcs", outer: disc(20, 2), distancesMm: [7] },
  { name: "a disc of seven arcs off the axis", outer: disc(20, 7, [40, 30]), distancesMm: [7] },
  { name: "many short sides", outer: manySided(80, 400), distancesMm: [0.01, 5] },
  { name: "a hollow of short sides", outer: hollow(20, 300), distancesMm: [5, 19, 20, 20.5, 30] },
  { name: "a spike's cusp", outer: cusp, distancesMm: [1, 30] },
  { name: "a slit's cusp", outer: slit, distancesMm: [1, 5, 12] },
  { name: "a hook", outer: hook, distancesMm: [1, 2, 4, 8] },
  { name: "collinear sides", outer: collinear, distancesMm: [3] },
  {
    name: "a concave arc of the very distance",
    outer: chain([
      line([-30, -10], [30, -10]),
      line([30, -10], [30, 20]),
      line([30, 20], [12, 20]),
      line([12, 20], [12, 17]),
      arc([7, 17], 5, 0, -Math.PI / 2),
      line([7, 12], [-30, 12]),
      line([-30, 12], [-30, -10]),
    ]),
    distancesMm: [4.9, 5, 5.1],
  },
  { name: "a rectangle", outer: rectangle(-30, -20, 40, 10), distancesMm: [3] },
];

/** Each with distances from next to nothing to ten times its size besides its own. */
export const ODD_CASES: readonly OddCase[] = oddCases.map(({ distancesMm, ...rest }) => ({
  ...rest,
  distancesMm: [...distancesMm, 1e-6, 0.05, 800],
}));
