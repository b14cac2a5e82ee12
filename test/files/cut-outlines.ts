/** Outlines whose cut files are tested, with what is known of them by formula. Lengths in mm. */
import { sectionOf } from "../../geometry/figures/section.ts";
import type { InnerLoop, Loop, Outline } from "../../geometry/outline/segment.ts";
import { reversedLoop } from "../../geometry/outline/transform.ts";
import {
  annulus,
  arc,
  type BulgeCorner,
  bulgeLoop,
  chain,
  circle,
  line,
  loopOf,
  outlineOf,
  type Pair,
  polygon,
  rectangle,
  slot,
} from "../support/loops.ts";

/** What a reader must find again in a cut file. */
export interface Expected {
  readonly areaMm2: number;
  readonly centroidMm: Pair;
  readonly boundsMm: readonly [x0: number, y0: number, x1: number, y1: number];
}

export interface CutCase {
  readonly name: string;
  readonly outline: Outline;
  readonly expected: Expected;
}

export function bore(radiusMm: number): InnerLoop {
  return { ...reversedLoop(circle(radiusMm)), kind: "bore" };
}

function withBore(outline: Outline, radiusMm: number): Outline {
  return { ...outline, inner: [bore(radiusMm), ...outline.inner] };
}

/** A signed area with its centroid, and several of them as one. */
type Part = readonly [area: number, x: number, y: number];
function composed(...parts: readonly Part[]): Pick<Expected, "areaMm2" | "centroidMm"> {
  const sum = (value: (part: Part) => number) => parts.reduce((total, part) => total + value(part), 0);
  const areaMm2 = sum(([area]) => area);
  return { areaMm2, centroidMm: [sum(([a, x]) => a * x) / areaMm2, sum(([a, , y]) => a * y) / areaMm2] };
}

/** A bar whose round ends are more than half circles: two discs and the waist between them, holes taken off. */
function roundEndedBar(): CutCase {
  const [radius, halfWaist, reach] = [40, 24, 80];
  const neck = Math.sqrt(radius ** 2 - halfWaist ** 2);
  const opening = Math.asin(halfWaist / radius);
  const sweep = 2 * Math.PI - 2 * opening;
  const inner = reach - neck;
  const outer = chain([
    arc([reach, 0], radius, -Math.PI + opening, sweep),
    line([inner, halfWaist], [-inner, halfWaist]),
    arc([-reach, 0], radius, opening, sweep),
    line([-inner, -halfWaist], [inner, -halfWaist]),
  ]);
  // A disc less the segment that the waist cuts off, of area r²(θ − sin θ)/2, and the first moment 2(r sin θ/2)³/3.
  const lost = radius ** 2 * (opening - Math.sin(opening) * Math.cos(opening));
  const disc = Math.PI * radius ** 2 - lost;
  const shift = (2 * halfWaist ** 3) / 3 / disc;
  const hole = 3.25;
  return {
    name: "a bar with ends of more than half a circle",
    outline: withBore(outlineOf(outer, circle(hole, [60, 5])), 11),
    expected: {
      ...composed(
        [disc, reach + shift, 0],
        [disc, -reach - shift, 0],
        [2 * inner * 2 * halfWaist, 0, 0],
        [-Math.PI * 11 ** 2, 0, 0],
        [-Math.PI * hole ** 2, 60, 5],
      ),
      boundsMm: [-reach - radius, -radius, reach + radius, radius],
    },
  };
}

/** A rectangle from (−60, −15) to (40, 15) with all corners rounded. */
function roundedRectangle(radius: number): CutCase {
  const [x0, y0, x1, y1] = [-60, -15, 40, 15];
  const quarter = Math.tan(Math.PI / 8);
  const outer = bulgeLoop([
    [x0 + radius, y0, 0],
    [x1 - radius, y0, quarter],
    [x1, y0 + radius, 0],
    [x1, y1 - radius, quarter],
    [x1 - radius, y1, 0],
    [x0 + radius, y1, quarter],
    [x0, y1 - radius, 0],
    [x0, y0 + radius, quarter],
  ]);
  return {
    name: `a bar with fillets of ${radius} mm`,
    outline: withBore(outlineOf(outer), 8),
    expected: {
      ...composed([100 * 30 - (4 - Math.PI) * radius ** 2, -10, 0], [-Math.PI * 64, 0, 0]),
      boundsMm: [x0, y0, x1, y1],
    },
  };
}

/** A regular polygon whose sides are arcs bending outwards. */
function scalloped(count: number, radius: number, bulge: number, [x, y]: Pair): CutCase {
  const corners = Array.from({ length: count }, (_, k): BulgeCorner => {
    const angle = (2 * Math.PI * k) / count;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle), bulge];
  });
  const chord = 2 * radius * Math.sin(Math.PI / count);
  const arcRadius = (chord * (1 + bulge ** 2)) / (4 * bulge);
  const sweep = 4 * Math.atan(bulge);
  const cap = (arcRadius ** 2 * (sweep - Math.sin(sweep))) / 2;
  const area = (count * radius ** 2 * Math.sin((2 * Math.PI) / count)) / 2 + count * cap;
  // The count is a multiple of four: a corner points each way, and the arcs beside it reach farthest.
  const centreDistance = radius * Math.cos(Math.PI / count) + (chord * bulge) / 2 - arcRadius;
  const reach = centreDistance * Math.cos(Math.PI / count) + arcRadius;
  return {
    name: `${count} arcs`,
    outline: outlineOf(bulgeLoop(corners)),
    expected: {
      ...composed([area, x, y]),
      boundsMm: [x - reach, y - reach, x + reach, y + reach],
    },
  };
}

function plateWithSlot(): CutCase {
  const length = Math.hypot(20, 7);
  return {
    name: "a plate with a slot",
    outline: outlineOf(rectangle(-60, -20, 80, 20), slot([-40, 3], [-20, 10], 8)),
    expected: {
      ...composed([140 * 40, 10, 0], [-(8 * length + Math.PI * 16), -30, 6.5]),
      boundsMm: [-60, -20, 80, 20],
    },
  };
}

/** So shallow that the centres are 250 km away; a cap of bulge b on a chord c has the area c²b/3, to the order b³. */
function shallowSides(): CutCase {
  const bulge = 1e-7;
  const cap = (100 ** 2 * bulge) / 3;
  const sagitta = (100 * bulge) / 2;
  return {
    name: "sides of very large radius",
    outline: outlineOf(
      bulgeLoop([
        [-30, -20, bulge],
        [70, -20, 0],
        [70, 20, bulge],
        [-30, 20, 0],
      ]),
    ),
    expected: {
      ...composed([4000 + 2 * cap, 20, 0]),
      boundsMm: [-30, -20 - sagitta, 70, 20 + sagitta],
    },
  };
}

/** Left over by rounding: pieces of 1e-13 mm between the sides. */
function withLeftovers(): CutCase {
  const e = 1e-13;
  return {
    name: "a plate with leftovers of rounding",
    outline: outlineOf(
      bulgeLoop([
        [-50, -20, 0],
        [70, -20, 0.4],
        [70, -20 + e, 0],
        [70, 20, 0],
        [70 - e, 20, 0],
        [-50, 20, 0],
      ]),
    ),
    expected: { ...composed([4800, 10, 0]), boundsMm: [-50, -20, 70, 20] },
  };
}

function discOfThreeArcs(): CutCase {
  const third = (2 * Math.PI) / 3;
  const outer = chain([0, 1, 2].map((k) => arc([0, 0], 90, 0.2 + k * third, third)));
  return {
    name: "a disc drawn as three arcs",
    outline: withBore(outlineOf(outer), 12.5),
    expected: { ...composed([Math.PI * (90 ** 2 - 12.5 ** 2), 0, 0]), boundsMm: [-90, -90, 90, 90] },
  };
}

/**
 * Two discs and two waists of one radius, smoothly joined, so that the arcs make one full turn in all and yet no
 * circle. The four centres are a rhombus; the sectors outside and inside it make up one disc.
 */
function peanut(): CutCase {
  const [radius, slope] = [30, 0.5];
  const [across, up] = [2 * radius * Math.cos(slope), 2 * radius * Math.sin(slope)];
  const end = 2 * Math.PI - 2 * slope;
  const waist = -(Math.PI - 2 * slope);
  const outer = chain([
    arc([across, 0], radius, -(Math.PI - slope), end),
    arc([0, up], radius, -slope, waist),
    arc([-across, 0], radius, slope, end),
    arc([0, -up], radius, Math.PI - slope, waist),
  ]);
  return {
    name: "a peanut of arcs of one radius",
    outline: outlineOf(outer),
    expected: {
      ...composed([2 * across * up + Math.PI * radius ** 2, 0, 0]),
      boundsMm: [-across - radius, -radius, across + radius, radius],
    },
  };
}

/** Two equal arcs between the same two points. */
function lens(): CutCase {
  const bulge = 0.4;
  const radius = (160 * (1 + bulge ** 2)) / (4 * bulge);
  const sweep = 4 * Math.atan(bulge);
  return {
    name: "a lens of two arcs",
    outline: outlineOf(
      bulgeLoop([
        [-80, 0, bulge],
        [80, 0, bulge],
      ]),
    ),
    expected: {
      ...composed([radius ** 2 * (sweep - Math.sin(sweep)), 0, 0]),
      boundsMm: [-80, -80 * bulge, 80, 80 * bulge],
    },
  };
}

/** A half circle bitten out of a side, next to a half circle put on. */
function biteAndBump(): CutCase {
  const half = (Math.PI * 100) / 2;
  const reach = (4 * 10) / (3 * Math.PI);
  return {
    name: "half circles inwards and outwards",
    outline: outlineOf(
      bulgeLoop([
        [-50, -30, 0],
        [50, -30, 0],
        [50, 30, 0],
        [40, 30, 1],
        [20, 30, 0],
        [-10, 30, -1],
        [-30, 30, 0],
        [-50, 30, 0],
      ]),
    ),
    expected: {
      ...composed([6000, 0, 0], [half, 30, 30 + reach], [-half, -20, 30 - reach]),
      boundsMm: [-50, -30, 50, 40],
    },
  };
}

export const HAND_MADE: readonly CutCase[] = [
  {
    name: "an annulus",
    outline: annulus(50, 20),
    expected: { ...composed([Math.PI * 2100, 0, 0]), boundsMm: [-50, -50, 50, 50] },
  },
  {
    name: "a disc without a hole, off the axis",
    outline: outlineOf(circle(35, [10, -4])),
    expected: { ...composed([Math.PI * 35 ** 2, 10, -4]), boundsMm: [-25, -39, 45, 31] },
  },
  {
    name: "a triangle away from the spin axis",
    outline: outlineOf(
      polygon([
        [500, 300],
        [560, 300],
        [500, 330],
      ]),
    ),
    expected: { ...composed([900, 520, 310]), boundsMm: [500, 300, 560, 330] },
  },
  plateWithSlot(),
  roundEndedBar(),
  roundedRectangle(14),
  roundedRectangle(0.001),
  shallowSides(),
  withLeftovers(),
  discOfThreeArcs(),
  peanut(),
  lens(),
  biteAndBump(),
  scalloped(2000, 120, 0.2, [3, -7]),
];

/** Numbers from 0 to 1 that are the same each time: a linear congruential generator, constants of Numerical Recipes. */
function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A star-shaped outline of lines and arcs, some over half a circle, with a bore, holes and a slot. */
export function randomCase(seed: number): CutCase {
  const random = randomNumbers(seed);
  const between = (least: number, most: number) => least + (most - least) * random();
  const count = Math.floor(between(3, 40));
  const corners = Array.from({ length: count }, (_, k): BulgeCorner => {
    const angle = (2 * Math.PI * (k + between(0, 0.8))) / count;
    const radius = between(60, 150);
    const bulge = random() < 0.4 ? 0 : random() < 0.1 ? between(1, 2.5) : between(-0.4, 0.6);
    return [radius * Math.cos(angle), radius * Math.sin(angle), bulge];
  });
  const holes = Array.from({ length: 3 }, (_, k): Loop => {
    const angle = (2 * Math.PI * (k + random())) / 4;
    return circle(between(0.5, 4), [20 * Math.cos(angle), 20 * Math.sin(angle)]);
  });
  const slit = slot([between(24, 28), between(-26, -22)], [between(24, 34), between(-12, -6)], between(2, 4));
  const outline = withBore(outlineOf(loopOf(bulgeLoop(corners).segments), ...holes, slit), between(5, 12));
  const { areaMm2, centroidMm, boundsMm } = sectionOf(outline);
  const { x, y } = centroidMm ?? { x: Number.NaN, y: Number.NaN };
  return { name: `random, seed ${seed}`, outline, expected: { areaMm2, centroidMm: [x, y], boundsMm } };
}

export const RANDOM: readonly CutCase[] = Array.from({ length: 10 }, (_, k) => randomCase(1000 + k));
