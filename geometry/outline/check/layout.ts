import type { Loop, Outline } from "../segment.ts";
import { boundsOfLoop, distanceToSegment } from "../segment-geometry.ts";
import { SAME_POINT_MM } from "../tolerance.ts";
import { ORIGIN } from "../vector.ts";
import { isInside } from "./inside.ts";
import { type Meeting, meetingsOf } from "./meetings.ts";
import { forNearPairs } from "./near-pairs.ts";
import { type NamedLoop, namedLoops, type PlacedSegment, placeSegments } from "./placed-segments.ts";

/** How the loops of an outline lie: whether each is simple, the holes inside and apart, the axis inside. */
export interface Layout {
  readonly loops: readonly NamedLoop[];
  readonly segments: readonly PlacedSegment[];
  /** Loops that meet themselves; where they lie is no question then. */
  readonly crossed: ReadonlyMap<NamedLoop, readonly Meeting[]>;
  readonly axisIsOutside: boolean;
  /** Simple holes that leave the outer loop. */
  readonly outside: ReadonlySet<NamedLoop>;
  /** Simple holes that touch, overlap or hold one another, the one with the lower number first. */
  readonly touching: readonly (readonly [NamedLoop, NamedLoop])[];
}

export function layoutOf(outline: Outline): Layout {
  const loops = namedLoops(outline);
  const segments = placeSegments(loops);
  const meetings = meetingsOf(segments);
  const crossed = crossedLoops(meetings);
  const met = new Set(meetings.map(({ a, b }) => pairKey(a.of, b.of)));
  const isSimpleHole = (of: NamedLoop): boolean => of.number > 0 && !crossed.has(of);
  const [outer] = loops;
  const isSound = outer !== undefined && !crossed.has(outer);
  const leaves = (hole: NamedLoop): boolean =>
    isSound && (met.has(pairKey(outer, hole)) || !holds(outer.loop, hole.loop));
  return {
    loops,
    segments,
    crossed,
    axisIsOutside: isSound && !holdsAxis(outer.loop),
    outside: new Set(loops.filter(isSimpleHole).filter(leaves)),
    touching: nearLoops(loops.filter(isSimpleHole)).filter(
      ([a, b]) => met.has(pairKey(a, b)) || holds(a.loop, b.loop) || holds(b.loop, a.loop),
    ),
  };
}

const pairKey = (a: NamedLoop, b: NamedLoop): string => `${a.number} ${b.number}`;

function crossedLoops(meetings: readonly Meeting[]): Map<NamedLoop, Meeting[]> {
  const crossed = new Map<NamedLoop, Meeting[]>();
  for (const meeting of meetings) {
    const { a, b } = meeting;
    if (a.of !== b.of) continue;
    const known = crossed.get(a.of);
    if (known === undefined) crossed.set(a.of, [meeting]);
    else known.push(meeting);
  }
  return crossed;
}

function holdsAxis(outer: Loop): boolean {
  const isOnEdge = outer.segments.some((segment) => distanceToSegment(segment, ORIGIN) <= SAME_POINT_MM);
  return !isOnEdge && isInside(outer, ORIGIN);
}

/** Whether a loop holds another that it does not meet: all of its points then lie on one side, so one will do. */
function holds(loop: Loop, other: Loop): boolean {
  const point = other.segments[0]?.from;
  return point !== undefined && isInside(loop, point);
}

/** Loops whose boxes touch; the others cannot. */
function nearLoops(loops: readonly NamedLoop[]): [NamedLoop, NamedLoop][] {
  const pairs: [NamedLoop, NamedLoop][] = [];
  const boxed = loops.map((of) => ({ of, box: boundsOfLoop(of.loop) }));
  forNearPairs(boxed, SAME_POINT_MM, (a, b) => pairs.push([a.of, b.of]));
  return pairs;
}
