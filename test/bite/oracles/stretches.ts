/**
 * An outline as stretches within stretches, each with its chord and how far it strays from it: what an oracle
 * asks when it wants to know what is surely out of reach. Lines and arcs stay exact; nothing is flattened.
 */
import type { Point } from "../../../geometry/language/design.ts";
import type { SpinDirection } from "../../../geometry/language/tree.ts";
import type { ArcSegment, Loop, Segment } from "../../../geometry/outline/segment.ts";

export interface Stretch {
  readonly from: Point;
  readonly to: Point;
  /** No point of the stretch lies farther from the chord between its ends. */
  readonly strayMm: number;
  /** The two stretches that it is made of; null for a part of one segment. */
  readonly parts: readonly [Stretch, Stretch] | null;
  /** The place of the segment in the loop, of the first one if there are more. */
  readonly segment: number;
  /** Which part of the segment it is. */
  readonly start: number;
  readonly end: number;
  /** The segment if it is an arc and the stretch a part of it. */
  readonly arc: ArcSegment | null;
}

/** A part of an arc this wide or less lies within its rise of its chord. */
const WIDEST_RAD = Math.PI / 2;
const HALF_STRAY = 1 / (4 * Math.cos(WIDEST_RAD / 8) ** 2);

/** The loop as one stretch. */
export function stretchOf(segments: readonly Segment[]): Stretch {
  const pieces = segments.flatMap((segment, i) => {
    if (segment.kind === "line") return [linePart(segment, i)];
    const count = Math.ceil(Math.abs(segment.sweepRad) / WIDEST_RAD);
    return Array.from({ length: count }, (_, k) => arcPart(segment, i, k / count, (k + 1) / count));
  });
  return gathered(pieces);
}

/** The halves of a stretch; null for a line, which is its own chord. */
export function halvesOf({ from, to, strayMm, parts, segment, start, end, arc }: Stretch): typeof parts {
  if (parts !== null || arc === null) return parts;
  const { centre, radiusMm } = arc;
  // From the centre through the middle of the chord: without the sine and cosine that the time would go on.
  const [x, y] = [(from.x + to.x) / 2 - centre.x, (from.y + to.y) / 2 - centre.y];
  const out = radiusMm / Math.sqrt(x * x + y * y);
  const middle = { x: centre.x + x * out, y: centre.y + y * out };
  const between = (start + end) / 2;
  // 2r·sin²(δ/8) of 2r·sin²(δ/4), no more than a quarter over cos² of an eighth of the widest δ.
  const stray = strayMm * HALF_STRAY;
  // Written out: copying the common part costs more than all the rest.
  return [
    { from, to: middle, strayMm: stray, parts: null, segment, start, end: between, arc },
    { from: middle, to, strayMm: stray, parts: null, segment, start: between, end, arc },
  ];
}

function linePart({ from, to }: Segment, segment: number): Stretch {
  return { from, to, strayMm: 0, parts: null, segment, start: 0, end: 1, arc: null };
}

/** `from` and `to` are at most `WIDEST_RAD` apart. */
function arcPart(arc: ArcSegment, segment: number, start: number, end: number): Stretch {
  const quarter = ((end - start) * arc.sweepRad) / 4;
  return {
    from: onArc(arc, start),
    to: onArc(arc, end),
    // The rise r(1 − cos δ/2), with its digits kept.
    strayMm: 2 * arc.radiusMm * Math.sin(quarter) ** 2,
    parts: null,
    segment,
    start,
    end,
    arc,
  };
}

function onArc({ from, to, centre, radiusMm, startRad, sweepRad }: ArcSegment, fraction: number): Point {
  if (fraction === 0) return from;
  if (fraction === 1) return to;
  const angle = startRad + fraction * sweepRad;
  return { x: centre.x + radiusMm * Math.cos(angle), y: centre.y + radiusMm * Math.sin(angle) };
}

function gathered(stretches: readonly Stretch[]): Stretch {
  const [only] = stretches;
  if (only === undefined) throw new RangeError("an outline without segments");
  if (stretches.length === 1) return only;
  const half = stretches.length >> 1;
  const [a, b] = [gathered(stretches.slice(0, half)), gathered(stretches.slice(half))];
  const { from } = a;
  const { to } = b;
  // The distance from a chord grows no faster than evenly: along a straight chord it is greatest at an end.
  const strays = [a, b].flatMap((part) =>
    [part.from, part.to].map((end) => distanceToChord(end, from, to) + part.strayMm),
  );
  const { segment, start } = a;
  return { from, to, strayMm: Math.max(...strays), parts: [a, b], segment, start, end: b.end, arc: null };
}

export function distanceToChord({ x, y }: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = dx * dx + dy * dy;
  const share = length > 0 ? ((x - from.x) * dx + (y - from.y) * dy) / length : 0;
  const within = Math.min(1, Math.max(0, share));
  return Math.sqrt((x - from.x - within * dx) ** 2 + (y - from.y - within * dy) ** 2);
}

/** The distance between two chords, 0 where they cross. */
export function distanceBetween(a: Point, b: Point, c: Point, d: Point): number {
  const crossed = side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
  if (crossed) return 0;
  return Math.min(
    distanceToChord(a, c, d),
    distanceToChord(b, c, d),
    distanceToChord(c, a, b),
    distanceToChord(d, a, b),
  );
}

function side(a: Point, b: Point, p: Point): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

/** The largest distance of any point of the segments from the axis, exactly. */
export function largestRadius(segments: readonly Segment[]): number {
  return Math.max(
    ...segments.flatMap((segment) => {
      const ends = [segment.from, segment.to].map(({ x, y }) => Math.hypot(x, y));
      return segment.kind === "arc" && facesOutward(segment)
        ? [...ends, Math.hypot(segment.centre.x, segment.centre.y) + segment.radiusMm]
        : ends;
    }),
  );
}

/** Whether the arc has the point that lies beyond its centre as seen from the axis. */
function facesOutward({ centre, startRad, sweepRad }: ArcSegment): boolean {
  const ahead = Math.sign(sweepRad) * (Math.atan2(centre.y, centre.x) - startRad);
  const turn = 2 * Math.PI;
  return ahead - turn * Math.floor(ahead / turn) <= Math.abs(sweepRad);
}

/** The segments of a bar, drawn so that it turns counter-clockwise: mirrored in the x axis if it does not. */
export function turningCcw({ segments }: Loop, direction: SpinDirection): readonly Segment[] {
  if (direction === "ccw") return segments;
  const flipped = ({ x, y }: Point): Point => ({ x, y: -y });
  return segments.map((segment): Segment => {
    const ends = { from: flipped(segment.from), to: flipped(segment.to) };
    if (segment.kind === "line") return { ...segment, ...ends };
    const { centre, startRad, sweepRad } = segment;
    return { ...segment, ...ends, centre: flipped(centre), startRad: -startRad, sweepRad: -sweepRad };
  });
}
