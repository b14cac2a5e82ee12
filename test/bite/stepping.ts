/**
 * The bite by brute force, with none of the product's mathematics of the bite: the outline as a fine polygon
 * that stands still, the target led round it in small steps, the first crossing taken. Slow, and good to
 * about 1e-5 of the radius.
 */
import type { Point } from "../../geometry/language/design.ts";
import type { SpinDirection } from "../../geometry/language/tree.ts";
import { flattenSegment } from "../../geometry/outline/flatten.ts";
import type { Loop } from "../../geometry/outline/segment.ts";

export interface SteppedBite {
  readonly maxMm: number;
  readonly meanMm: number;
  /** Share of the strikes on each segment of the loop. */
  readonly shares: readonly number[];
}

export interface SteppingEffort {
  /** Starting phases, evenly spread. */
  readonly phases: number;
  /** How often the gap between two phases that strike different places is halved. */
  readonly halvings: number;
  /** Steps a turn. */
  readonly steps: number;
  /** Flatness of the polygon as a share of the largest radius. */
  readonly flatness: number;
}

/** Good to a ten-thousandth of the radius and a thousandth of the strikes, grazing strikes and all. */
const CAREFUL: SteppingEffort = { phases: 500, halvings: 10, steps: 1440, flatness: 1e-6 };
/**
 * Good to about a millionth of the radius in depth, and of all strikes in share, on bars without grazing
 * strikes.
 */
export const FINE: SteppingEffort = { phases: 2000, halvings: 12, steps: 5760, flatness: 1e-7 };

interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly segment: number;
}

/** First contact of one starting phase. */
interface Contact {
  readonly radius: number;
  readonly segment: number;
}

/**
 * Step the bar against an edge.
 * @param advanceMm how much nearer the target comes while the bar turns a radian
 */
export function stepBite(
  outer: Loop,
  direction: SpinDirection,
  advanceMm: number,
  effort: SteppingEffort = CAREFUL,
): SteppedBite {
  const edges = edgesOf(outer, effort.flatness);
  const reach = Math.max(...edges.map(({ from }) => Math.hypot(from.x, from.y)));
  const sectors = sectorsOf(edges, effort.steps);
  const contact = (turns: number) => firstContact(sectors, direction, advanceMm, reach, turns);
  const shares = outer.segments.map(() => 0);
  let [deepest, mean] = [0, 0];

  const add = (from: number, a: Contact, to: number, b: Contact, halvings: number): void => {
    const width = to - from;
    const smooth = 3 * 2 * Math.PI * advanceMm * width;
    if (halvings > 0 && (a.segment !== b.segment || Math.abs(a.radius - b.radius) > smooth)) {
      const middle = (from + to) / 2;
      const c = contact(middle);
      add(from, a, middle, c, halvings - 1);
      add(middle, c, to, b, halvings - 1);
      return;
    }
    for (const end of [a, b]) {
      deepest = Math.max(deepest, reach - end.radius);
      mean += ((reach - end.radius) * width) / 2;
      shares[end.segment] = (shares[end.segment] ?? 0) + width / 2;
    }
  };
  const first = contact(0);
  let before = first;
  for (let i = 1; i <= effort.phases; i++) {
    const here = i === effort.phases ? first : contact(i / effort.phases);
    add((i - 1) / effort.phases, before, i / effort.phases, here, effort.halvings);
    before = here;
  }
  return { maxMm: deepest, meanMm: mean, shares };
}

function edgesOf(outer: Loop, flatness: number): Edge[] {
  const reach = Math.max(...outer.segments.map(({ from }) => Math.hypot(from.x, from.y)));
  const starts = outer.segments.flatMap((segment, i) =>
    flattenSegment(segment, flatness * reach).map((from) => ({ from, segment: i })),
  );
  return starts.map(({ from, segment }, i) => ({
    from,
    segment,
    to: (starts[(i + 1) % starts.length] ?? { from }).from,
  }));
}

/** A thin slice about the axis with what lies in it. */
interface Sector {
  readonly edges: readonly Edge[];
  /** Nothing in the sector lies farther out. */
  readonly reach: number;
}

/** The edges that reach into each sector about the axis, or come near it. */
function sectorsOf(edges: readonly Edge[], count: number): Sector[] {
  const sectors = Array.from({ length: count }, (): Edge[] => []);
  const width = (2 * Math.PI) / count;
  for (const edge of edges) {
    const { from, to } = edge;
    const start = Math.atan2(from.y, from.x);
    const sweep = Math.atan2(from.x * to.y - from.y * to.x, from.x * to.x + from.y * to.y);
    const low = Math.floor((Math.min(start, start + sweep) - 1e-9) / width);
    const high = Math.floor((Math.max(start, start + sweep) + 1e-9) / width);
    for (let i = low; i <= high; i++) sectors[((i % count) + count) % count]?.push(edge);
  }
  return sectors.map((own) => ({
    edges: own,
    reach: Math.max(...own.flatMap(({ from, to }) => [Math.hypot(from.x, from.y), Math.hypot(to.x, to.y)])),
  }));
}

function firstContact(
  sectors: readonly Sector[],
  direction: SpinDirection,
  advance: number,
  reach: number,
  turns: number,
): Contact {
  const count = sectors.length;
  const width = (2 * Math.PI) / count;
  // A bar that turns counter-clockwise sees its target go clockwise.
  const sense = direction === "ccw" ? -1 : 1;
  const radiusAt = (turned: number): number => reach * (1 + 1e-12) - advance * turned;
  const at = (turned: number): Point => {
    const angle = 2 * Math.PI * turns + sense * turned;
    return { x: radiusAt(turned) * Math.cos(angle), y: radiusAt(turned) * Math.sin(angle) };
  };
  const start = turns * count * sense;
  for (let step = Math.floor(start), from = 0; ; step++) {
    const to = (step + 1 - start) * width;
    const index = sense > 0 ? step : -step - 1;
    const sector = sectors[((index % count) + count) % count] ?? { edges: [], reach: 0 };
    const hit = radiusAt(to) <= sector.reach ? firstCrossing(sector.edges, at, from, to) : null;
    if (hit) return { radius: reach - advance * hit.turned, segment: hit.edge.segment };
    if (advance * to > reach) throw new Error("the target passed the axis");
    from = to;
  }
}

/** The first edge crossed between two moments: by the chord of the path, then made exact on the path. */
function firstCrossing(
  edges: readonly Edge[],
  at: (turned: number) => Point,
  from: number,
  to: number,
): { edge: Edge; turned: number } | null {
  const [a, b] = [at(from), at(to)];
  let best: { edge: Edge; share: number } | null = null;
  for (const edge of edges) {
    const share = crossingShare(a, b, edge);
    if (share !== null && (best === null || share < best.share)) best = { edge, share };
  }
  if (best === null) return null;
  const { edge, share } = best;
  const side = (turned: number) => sideOf(edge, at(turned));
  let [low, high] = [from, to];
  const sign = side(low);
  if (sign > 0 === side(high) > 0) return { edge, turned: from + share * (to - from) };
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (side(middle) > 0 === sign > 0) low = middle;
    else high = middle;
  }
  return { edge, turned: high };
}

function sideOf({ from, to }: Edge, point: Point): number {
  return (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
}

/** How far along a–b the edge is crossed from outside (the right of it) to inside; null if it is not. */
function crossingShare(a: Point, b: Point, edge: Edge): number | null {
  const [before, after] = [sideOf(edge, a), sideOf(edge, b)];
  if (before > 0 || after <= 0) return null;
  const [p, q] = [
    sideOf({ from: a, to: b, segment: 0 }, edge.from),
    sideOf({ from: a, to: b, segment: 0 }, edge.to),
  ];
  if (p > 0 === q > 0) return null;
  return before / (before - after);
}
