/**
 * The bite's light and shade checked ray by ray: on each ray the lit place must lie on the drawn outline, and
 * nothing of the outline may lie farther out. Works from the loop's own points, not from the pieces that the
 * product cuts.
 */
import { approachLight } from "../../geometry/bite/approach-light.ts";
import type { BiteProfile } from "../../geometry/bite/bite-profile.ts";
import { pointOn } from "../../geometry/bite/given.ts";
import { litBy } from "../../geometry/bite/light.ts";
import type { Point } from "../../geometry/language/design.ts";
import { pointAt } from "../../geometry/outline/segment-geometry.ts";

/** Samples along each segment. */
const SAMPLES = 40;

/** A sampled place: how far out, and how far round in the order offered. */
interface Place {
  readonly radius: number;
  readonly theta: number;
}

/** What is wrong with the lit parts at one advance; empty if nothing is. */
export function envelopeFaults(profile: BiteProfile, advance: number, rays: number): string[] {
  const light = approachLight(profile, advance);
  const lit = litBy(light);
  const period = 2 * Math.PI * advance;
  const first = lit[0]?.xFrom ?? Number.NaN;
  const faults = lit.flatMap(({ xFrom }, i) =>
    xFrom === (lit[i - 1]?.xTo ?? xFrom) ? [] : [`a gap at ray ${xFrom}`],
  );
  const last = lit.at(-1)?.xTo ?? Number.NaN;
  if (!(Math.abs(last - first - period) <= 1e-12 * (profile.maxRadiusMm + period)))
    faults.push(`the rays end at ${last}`);
  const outline = stretchesOf(profile);
  const shift = thetaShift(profile);
  for (let i = 0; i < rays; i++) {
    const x = first + (period * (i + 0.5)) / rays;
    const part = lit.find(({ xTo }) => xTo >= x);
    if (part === undefined) {
      faults.push(`ray ${x} meets nothing`);
      continue;
    }
    const s = light.find(part.index, part.from, part.to, x);
    const piece = light.pieceAt(part.index);
    const { radius, theta } = placeOf(profile, pointOn(profile, piece, s) ?? NOWHERE);
    const off = (radius + advance * (theta - shift) - x) / period;
    if (Math.abs(off - Math.round(off)) > 1e-9 * (1 + profile.maxRadiusMm / period))
      faults.push(`ray ${x} misses its place`);
    const farthest = farthestOn(outline, advance, x + advance * shift);
    if (farthest > radius + 1e-9 * profile.maxRadiusMm)
      faults.push(`ray ${x} is met at ${farthest} before ${radius}`);
  }
  return faults;
}

/** What no ray can meet. */
const NOWHERE: Point = { x: Number.NaN, y: Number.NaN };

/** The angle of the first piece's start, from which the product counts. */
function thetaShift(profile: BiteProfile): number {
  const [piece] = profile.pieces;
  return piece === undefined ? 0 : placeOf(profile, pointOn(profile, piece, piece.from) ?? NOWHERE).theta;
}

/** θ up to whole turns. */
function placeOf({ direction }: BiteProfile, { x, y }: Point): Place {
  return { radius: Math.hypot(x, y), theta: (direction === "ccw" ? -1 : 1) * Math.atan2(y, x) };
}

/** A stretch of the drawn outline between two samples, θ unwrapped. */
interface Stretch {
  readonly from: Place;
  readonly to: Place;
  at(share: number): Place;
}

function stretchesOf(profile: BiteProfile): Stretch[] {
  const stretches: Stretch[] = [];
  let before: Place | null = null;
  for (const segment of profile.outer.segments) {
    for (let i = 0; i < SAMPLES; i++) {
      const from: Place = before ?? placeOf(profile, pointAt(segment, 0));
      const at = (share: number) => near(from, placeOf(profile, pointAt(segment, (i + share) / SAMPLES)));
      const to = at(1);
      stretches.push({ from, to, at });
      before = to;
    }
  }
  return stretches;
}

/** The place with the whole turns that bring it next to another. */
function near(other: Place, { radius, theta }: Place): Place {
  return { radius, theta: theta - 2 * Math.PI * Math.round((theta - other.theta) / (2 * Math.PI)) };
}

/** The largest radius at which the sampled outline meets a ray. */
function farthestOn(outline: readonly Stretch[], advance: number, x: number): number {
  const period = 2 * Math.PI * advance;
  const xOf = ({ radius, theta }: Place) => radius + advance * theta;
  let farthest = 0;
  for (const { from, to, at } of outline) {
    if (Math.max(from.radius, to.radius) <= farthest) continue;
    const [low, high] = [Math.min(xOf(from), xOf(to)), Math.max(xOf(from), xOf(to))];
    // The ray again a turn on and a turn back, as often as it meets the stretch.
    for (let ray = x + period * Math.ceil((low - x) / period); ray <= high; ray += period) {
      const share = halved((s) => xOf(at(s)) > ray, xOf(from) > ray);
      farthest = Math.max(farthest, at(share).radius);
    }
  }
  return farthest;
}

/** The share from 0 to 1 at which a test changes its answer. */
function halved(test: (share: number) => boolean, atStart: boolean): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 45; i++) {
    const middle = (low + high) / 2;
    if (test(middle) === atStart) low = middle;
    else high = middle;
  }
  return low;
}
