/**
 * The path of a face square to the approach: how far its plane is from the axis when it touches the bar, against the
 * direction it comes from. Only the convex hull is touched: corners and arcs that bulge outwards.
 */
import type { Segment } from "../outline/segment.ts";
import { angleOf, FULL_TURN, norm, wrapped } from "../outline/vector.ts";
import { atRound } from "./at-round.ts";
import { radiusAt, type SupportCurve } from "./curve.ts";
import type { Offered, Touch } from "./offered.ts";

/** A corner, or an arc that bulges outwards: its support is radius + reach·cos(θ − towards). */
interface Bulge {
  readonly curve: SupportCurve;
  readonly towards: number;
  readonly touch: Touch;
}

/** A range of θ over which one bulge is farthest out. */
interface Stretch {
  readonly bulge: Bulge;
  readonly from: number;
  readonly to: number;
}

/** The path of a face, once round from θ = 0. */
export function supportOf(
  segments: readonly Segment[],
  touches: readonly Touch[],
  cornerAfter: (i: number) => Touch,
): Offered[] {
  const leaves = segments.map((segment, i) => leafOf(segment, atRound(touches, i), cornerAfter(i)));
  const stretches = joined(envelope(leaves));
  const heights = stretches.map(({ bulge, from }) => radiusAt(bulge.curve, from - bulge.towards));
  return stretches.map(({ bulge, from, to }, i) => ({
    curve: bulge.curve,
    touch: bulge.touch,
    from: from - bulge.towards,
    to: to - bulge.towards,
    alongFrom: atRound(heights, i),
    alongTo: atRound(heights, i + 1),
    thetaFrom: from,
  }));
}

/** The corner at the end of a segment all round, and before it, where it bulges out, the segment itself. */
function leafOf(segment: Segment, own: Touch, corner: Touch): Stretch[] {
  const atCorner = bulgeAt(segment.to, 0, corner);
  // In offering order the outline goes clockwise: an arc that turns right bulges outwards.
  if (segment.kind === "line" || segment.sweepRad >= 0) return [{ bulge: atCorner, from: 0, to: FULL_TURN }];
  const arc = bulgeAt(segment.centre, segment.radiusMm, own);
  const from = wrapped(-segment.startRad);
  const to = from - Math.max(-FULL_TURN, segment.sweepRad);
  const over = to > FULL_TURN ? [{ bulge: arc, from: 0, to: to - FULL_TURN }] : [];
  const within = { bulge: arc, from, to: Math.min(to, FULL_TURN) };
  const gaps =
    over.length > 0
      ? [[to - FULL_TURN, from]]
      : [
          [0, from],
          [to, FULL_TURN],
        ];
  const rest = gaps.flatMap(([a = 0, b = 0]) => (b > a ? [{ bulge: atCorner, from: a, to: b }] : []));
  return [...over, within, ...rest].sort((a, b) => a.from - b.from);
}

function bulgeAt(centre: Segment["to"], radius: number, touch: Touch): Bulge {
  const curve: SupportCurve = { kind: "support", reach: norm(centre), radius, aside: 0 };
  return { curve, towards: -angleOf(centre), touch };
}

/** The upper envelope, by halves. */
function envelope(leaves: readonly Stretch[][]): Stretch[] {
  if (leaves.length <= 1) return leaves[0] ?? [];
  const half = leaves.length >> 1;
  return merged(envelope(leaves.slice(0, half)), envelope(leaves.slice(half)));
}

function merged(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  const result: Stretch[] = [];
  let [i, j, from] = [0, 0, 0];
  for (;;) {
    const [first, second] = [a[i], b[j]];
    if (first === undefined || second === undefined) return result;
    const to = Math.min(first.to, second.to);
    if (to > from) pushHigher(result, first.bulge, second.bulge, from, to);
    from = Math.max(from, to);
    if (first.to <= to) i++;
    if (second.to <= to) j++;
  }
}

/** Over a range, the higher of two bulges, cut where one overtakes the other. */
function pushHigher(result: Stretch[], a: Bulge, b: Bulge, from: number, to: number): void {
  const ends = [from, ...overtakings(a, b, from, to), to];
  for (let i = 1; i < ends.length; i++) {
    const [start = from, end = to] = [ends[i - 1], ends[i]];
    const middle = (start + end) / 2;
    const bulge = supportAt(a, middle) >= supportAt(b, middle) ? a : b;
    const last = result.at(-1);
    if (last?.bulge === bulge && last.to === start) result[result.length - 1] = { ...last, to: end };
    else result.push({ bulge, from: start, to: end });
  }
}

function supportAt({ curve, towards }: Bulge, theta: number): number {
  return curve.radius + curve.reach * Math.cos(theta - towards);
}

/** Where the difference of two bulges, which is again a constant and a cosine, is 0. */
function overtakings(a: Bulge, b: Bulge, from: number, to: number): number[] {
  const x = a.curve.reach * Math.cos(a.towards) - b.curve.reach * Math.cos(b.towards);
  const y = a.curve.reach * Math.sin(a.towards) - b.curve.reach * Math.sin(b.towards);
  const cosine = (b.curve.radius - a.curve.radius) / Math.hypot(x, y);
  if (!(Math.abs(cosine) < 1)) return [];
  const towards = Math.atan2(y, x);
  const off = Math.acos(cosine);
  return [wrapped(towards - off), wrapped(towards + off)]
    .filter((s) => s > from && s < to)
    .sort((p, q) => p - q);
}

/** A stretch shorter than this is where neighbours touch: rounding. */
const NO_STRETCH_RAD = 1e-12;

/** Neighbours that are the same bulge made one, slivers left out, each starting where the one before ends. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const result: Stretch[] = [];
  for (const stretch of stretches.filter(({ from, to }) => to - from > NO_STRETCH_RAD)) {
    const last = result.at(-1);
    if (last?.bulge === stretch.bulge) result[result.length - 1] = { ...last, to: stretch.to };
    else result.push(last === undefined ? { ...stretch, from: 0 } : { ...stretch, from: last.to });
  }
  const last = result.at(-1);
  if (last !== undefined) result[result.length - 1] = { ...last, to: FULL_TURN };
  return result;
}
