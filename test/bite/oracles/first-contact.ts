/**
 * First contact by brute force: a turning bar and a coming target followed through time, and the time halved
 * wherever the two may touch. None of the product's mathematics of the bite is in it: no polar plane, no
 * light and shade, no closed form of a contact, no offset outline.
 *
 * Over a short time dt the target's way, seen from the bar, strays from its chord by at most A·dt²/8, A being
 * its largest acceleration. If chord and outline keep farther apart than that, nothing touches in that time,
 * and it is passed over whole. What is left is halved, the earlier half first, down to a hundred-millionth of
 * the radius. So nothing is ever stepped over, and what is found is good to about 1e-8 of the radius.
 */
import type { Point } from "../../../geometry/language/design.ts";
import type { SpinDirection } from "../../../geometry/language/tree.ts";
import type { Loop, Segment } from "../../../geometry/outline/segment.ts";
import {
  distanceBetween,
  distanceToChord,
  halvesOf,
  largestRadius,
  type Stretch,
  stretchOf,
  turningCcw,
} from "./stretches.ts";

/** What comes: a point, a disc, or an endless flat square to its way. Offsets are from the spin axis. */
export type SteppedTarget =
  | { readonly kind: "edge"; readonly offsetMm?: number }
  | { readonly kind: "round"; readonly radiusMm: number; readonly offsetMm?: number }
  | { readonly kind: "face" };

/** How one starting phase ends. */
export interface Contact {
  /** How far the target has come inside the circle that the bar sweeps. */
  readonly depthMm: number;
  /** The target came abreast of the axis and met nothing; the rest is then null. */
  readonly passed: boolean;
  readonly hit: Hit | null;
}

export interface Hit {
  /** Where on the bar, as drawn. */
  readonly point: Point;
  /** The place of the segment in the loop as given, and how far along it, 0 to 1. */
  readonly segment: number;
  readonly fraction: number;
  /** Between the outward normal of what is struck and the way that point of the bar moves. */
  readonly strikeAngleRad: number;
}

/** Follows one starting phase, in radians: the bar is turned by it when the target enters the swept circle. */
export type Stepper = (phaseRad: number) => Contact;

/** As a share of the largest radius: how finely time is halved, and rounding. */
const FINE_SHARE = 1e-8;
const SLACK_SHARE = 1e-12;
/** Time is first cut into pieces of so many radians of turning. */
const PIECE_RAD = 0.5;

/** A moment: how far the bar has turned since the target entered. */
interface Moment {
  readonly turned: number;
  readonly cos: number;
  readonly sin: number;
  /** The target's place on its way: the point's, the disc's centre's or the face's x. */
  readonly x: number;
  /** The point or centre in the bar's frame. */
  readonly place: Point;
}

/** A target on its way. */
interface Approach {
  /** Where it enters the swept circle, in mm before the axis. */
  readonly entry: number;
  readonly offset: number;
  /** Its distance from the nearest point of the stretch at some time between two moments may be 0. */
  mayTouch(stretch: Stretch, a: Moment, b: Moment, slack: number): boolean;
  /** Whether an end of the stretch, which is a point of the bar, is surely in touch at a moment. */
  touches(stretch: Stretch, at: Moment): boolean;
  /** The distance still to go, for telling which of a few stretches is the one that is struck. */
  gap(stretch: Stretch, at: Moment): number;
}

/**
 * Prepare to follow starting phases of one bar and target.
 * @param outer counter-clockwise and simple, the spin axis strictly inside
 * @param advanceMm how much nearer the target comes while the bar turns a radian, above 0
 */
export function stepper(
  outer: Loop,
  direction: SpinDirection,
  target: SteppedTarget,
  advanceMm: number,
): Stepper {
  if (!(advanceMm > 0)) throw new RangeError(`a target that advances by ${advanceMm} mm never comes`);
  const segments = turningCcw(outer, direction);
  const hand = direction === "ccw" ? 1 : -1;
  const whole = stretchOf(segments);
  const reach = largestRadius(segments);
  const approach = approachOf(target, reach);
  const { entry, offset } = approach;
  const slack = SLACK_SHARE * reach;
  // The target's acceleration seen from the turning bar: inwards by its distance, and sideways by 2κ.
  const bend = Math.hypot(entry, offset) + 2 * advanceMm;
  const fine = (FINE_SHARE * reach) / (reach + advanceMm + Math.abs(offset));
  const end = entry / advanceMm;

  const first = (phase: number, a: Moment, b: Moment, among: readonly Stretch[]): Found | null => {
    const span = b.turned - a.turned;
    const stray = (bend * span * span) / 8 + slack;
    const near = narrowed(approach, among, a, b, stray, span <= fine);
    if (near.length === 0) return null;
    if (span <= fine) return { at: a, stretch: nearest(approach, near, a) };
    const middle = momentAt(phase, (a.turned + b.turned) / 2);
    return first(phase, a, middle, near) ?? first(phase, middle, b, near);
  };

  const momentAt = (phase: number, turned: number): Moment => {
    const [cos, sin] = [Math.cos(phase + turned), Math.sin(phase + turned)];
    const x = entry - advanceMm * turned;
    return { turned, cos, sin, x, place: { x: cos * x + sin * offset, y: cos * offset - sin * x } };
  };

  return (phase) => {
    let a = momentAt(phase, 0);
    while (a.turned < end) {
      const b = momentAt(phase, Math.min(end, a.turned + PIECE_RAD));
      const found = first(phase, a, b, [whole]);
      if (found !== null) {
        const { at, stretch } = found;
        const hit = hitOf(target, segments, at, stretch, hand);
        const point = { x: hit.point.x, y: hand * hit.point.y };
        return { depthMm: entry - at.x, passed: false, hit: { ...hit, point } };
      }
      a = b;
    }
    return { depthMm: entry, passed: true, hit: null };
  };
}

/** N starting phases, evenly spread over a turn; `shift` from 0 to 1 moves them by a part of their spacing. */
export function evenPhases(step: Stepper, count: number, shift = 0.5): Contact[] {
  return Array.from({ length: count }, (_, i) => step((2 * Math.PI * (i + shift)) / count));
}

interface Found {
  readonly at: Moment;
  readonly stretch: Stretch;
}

function approachOf(target: SteppedTarget, reach: number): Approach {
  if (target.kind === "face") return faceApproach(reach);
  const offset = target.offsetMm ?? 0;
  const radius = target.kind === "round" ? target.radiusMm : 0;
  const outer = reach + radius;
  if (!(Math.abs(offset) < outer)) throw new RangeError(`a target ${offset} mm off passes by the bar`);
  return {
    entry: Math.sqrt(outer * outer - offset * offset),
    offset,
    mayTouch: ({ from, to, strayMm }, a, b, stray) =>
      distanceBetween(a.place, b.place, from, to) <= radius + strayMm + stray,
    touches: ({ from, to }, { place }) => isWithin(radius, place, from) || isWithin(radius, place, to),
    gap: ({ from, to }, { place }) => distanceToChord(place, from, to),
  };
}

const isWithin = (radius: number, a: Point, b: Point): boolean =>
  (a.x - b.x) ** 2 + (a.y - b.y) ** 2 <= radius * radius;

function faceApproach(reach: number): Approach {
  /** How far a point of the bar stands over the face. */
  const over = ({ x, y }: Point, { cos, sin, x: face }: Moment) => x * cos - y * sin - face;
  return {
    entry: reach,
    offset: 0,
    // A point's way is bent by its own radius only, and on a chord the highest point is an end.
    mayTouch: ({ from, to, strayMm }, a, b, stray) =>
      Math.max(over(from, a), over(from, b), over(to, a), over(to, b)) + strayMm + stray >= 0,
    touches: ({ from, to }, at) => over(from, at) >= 0 || over(to, at) >= 0,
    gap: ({ from, to }, at) => -Math.max(over(from, at), over(to, at)),
  };
}

/**
 * The stretches that may touch between two moments, opened as far as they stray more than the way does; in the
 * end so far that each is a part of one segment. Where one surely touches, nothing is gained by opening more
 * before the time is halved.
 */
function narrowed(
  approach: Approach,
  among: readonly Stretch[],
  a: Moment,
  b: Moment,
  stray: number,
  toSegments: boolean,
): Stretch[] {
  const near: Stretch[] = [];
  const open = [...among].reverse();
  let sure = false;
  for (let stretch = open.pop(); stretch !== undefined; stretch = open.pop()) {
    if (!approach.mayTouch(stretch, a, b, stray)) continue;
    sure ||= approach.touches(stretch, b);
    const mustOpen = toSegments
      ? stretch.parts !== null || stretch.strayMm > stray
      : !sure && stretch.strayMm > stray;
    const halves = mustOpen ? halvesOf(stretch) : null;
    if (halves === null) near.push(stretch);
    else open.push(halves[1], halves[0]);
  }
  return near;
}

function nearest(approach: Approach, stretches: readonly Stretch[], at: Moment): Stretch {
  return stretches.reduce((a, b) => (approach.gap(b, at) < approach.gap(a, at) ? b : a));
}

function hitOf(
  target: SteppedTarget,
  segments: readonly Segment[],
  at: Moment,
  { from, to, segment, start, end }: Stretch,
  hand: 1 | -1,
): Hit {
  const share = target.kind === "face" ? higherEnd(at, from, to) : footShare(at.place, from, to);
  const point = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
  const outward = outwardAt(target, segments[segment], at, point, { from, to }, hand);
  // Turning counter-clockwise a point moves a quarter turn left of its radius.
  const cos = -point.y * outward.x + point.x * outward.y;
  const sin = point.x * outward.x + point.y * outward.y;
  return {
    point,
    segment,
    fraction: start + share * (end - start),
    strikeAngleRad: Math.abs(Math.atan2(sin, cos)),
  };
}

const higherEnd = ({ cos, sin }: Moment, from: Point, to: Point): number =>
  (to.x - from.x) * cos - (to.y - from.y) * sin > 0 ? 1 : 0;

function footShare({ x, y }: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const share = ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy);
  return Math.min(1, Math.max(0, share));
}

/** The direction out of the metal: of any length. */
function outwardAt(
  target: SteppedTarget,
  segment: Segment | undefined,
  { cos, sin, place }: Moment,
  point: Point,
  chord: { from: Point; to: Point },
  hand: 1 | -1,
): Point {
  if (target.kind === "face") return { x: cos, y: -sin };
  if (target.kind === "round") return { x: place.x - point.x, y: place.y - point.y };
  // The metal lies left of a loop as given, and right of its mirror image.
  if (segment?.kind === "arc") {
    const bulged = hand * Math.sign(segment.sweepRad);
    return { x: bulged * (point.x - segment.centre.x), y: bulged * (point.y - segment.centre.y) };
  }
  return { x: hand * (chord.to.y - chord.from.y), y: hand * (chord.from.x - chord.to.x) };
}
