/**
 * A target on a line aside of the axis is abreast of it at the distance `aside`. What it has not met by then it has
 * passed: the path is closed there by the circle about the axis that its line touches.
 */

import type { Segment } from "../outline/segment.ts";
import { pointAt } from "../outline/segment-geometry.ts";
import { angleOf, wrapped } from "../outline/vector.ts";
import { atRound } from "./at-round.ts";
import { type Curve, radiusAt } from "./curve.ts";
import type { Offered, Touch } from "./offered.ts";

/** A stretch of path outside the circle, with θ at its ends. */
interface Excursion {
  readonly parts: readonly Offered[];
  readonly thetaFrom: number;
  readonly thetaTo: number;
}

/**
 * The outer boundary of the path and the circle about the axis together; the path alone if it stays outside, and
 * empty if nothing of it is. `segments` are what the parts run along.
 */
export function withAxisDisc(
  parts: readonly Offered[],
  segments: readonly Segment[],
  aside: number,
): Offered[] {
  const circle = Math.abs(aside);
  const kept = parts.map((part, i) => outsideOf(circle, part, atRound(segments, i)));
  if (kept.every((own, i) => own.length === 1 && own[0]?.part === parts[i])) return [...parts];
  const excursions = excursionsOf(kept.flat());
  const first = excursions.reduce<Excursion | null>(
    (a, b) => (a && farthest(a) >= farthest(b) ? a : b),
    null,
  );
  if (first === null) return [];
  const boundary: Offered[] = [];
  let at = first;
  do {
    const next = excursions.reduce((a, b) => (ahead(at, b) < ahead(at, a) ? b : a));
    boundary.push(...at.parts, passing(aside, at.thetaTo, at.thetaTo + ahead(at, next)));
    at = next;
  } while (at !== first && boundary.length <= 2 * parts.length + 2 * excursions.length);
  return boundary;
}

/** How far θ grows along the circle from the end of one excursion to the start of another. */
function ahead({ thetaTo }: Excursion, { thetaFrom }: Excursion): number {
  return wrapped(thetaFrom - thetaTo);
}

function farthest({ parts }: Excursion): number {
  return Math.max(
    ...parts.flatMap(({ alongFrom, alongTo, curve, from, to }) => [
      alongFrom,
      alongTo,
      topOf(curve, from, to),
    ]),
  );
}

/** What an arc has farthest out between its ends. */
function topOf(curve: Curve, from: number, to: number): number {
  const top = 2 * Math.PI * Math.ceil(from / (2 * Math.PI));
  if (curve.kind === "line" || top > to) return 0;
  const radius = curve.reach + curve.radius;
  return Math.sqrt(Math.max(0, radius * radius - curve.aside * curve.aside));
}

/** A part outside the circle; `enters` where it begins on the circle, `leaves` where it ends on it, else null. */
interface Kept {
  readonly part: Offered;
  readonly enters: number | null;
  readonly leaves: number | null;
}

function outsideOf(circle: number, part: Offered, segment: Segment): Kept[] {
  const { curve, from, to } = part;
  const crossings = crossingsOf(curve, circle).flatMap((s) => again(curve, s, from, to));
  const ends = [from, ...crossings.sort((a, b) => a - b), to];
  const theta = (s: number) => -angleOf(pointAt(segment, (s - from) / (to - from)));
  return ends.slice(1).flatMap((end, i): Kept[] => {
    const start = ends[i] ?? from;
    if (end <= start || radiusAt(curve, (start + end) / 2) <= circle) return [];
    const [whole, last] = [start === from, end === to];
    if (whole && last) return [{ part, enters: null, leaves: null }];
    const own = { alongFrom: whole ? part.alongFrom : 0, alongTo: last ? part.alongTo : 0 };
    return [
      {
        part: { ...part, from: start, to: end, ...own, thetaFrom: theta(start) },
        enters: whole ? null : theta(start),
        leaves: last ? null : theta(end),
      },
    ];
  });
}

/** The places, up to sign and whole turns, at which the radius is that of the circle. */
function crossingsOf(curve: Curve, circle: number): number[] {
  if (curve.kind === "line") {
    const off = Math.abs(curve.offset);
    return off < circle ? [Math.sqrt((circle - off) * (circle + off))] : [];
  }
  const { reach, radius } = curve;
  const cosine = (circle * circle - reach * reach - radius * radius) / (2 * reach * radius);
  return Math.abs(cosine) < 1 ? [Math.acos(cosine)] : [];
}

function again(curve: Curve, place: number, from: number, to: number): number[] {
  if (curve.kind === "line") return [-place, place].filter((s) => s > from && s < to);
  const turns = Math.ceil((to - from) / (2 * Math.PI)) + 1;
  const first = Math.floor(from / (2 * Math.PI));
  const around = Array.from({ length: turns + 1 }, (_, k) => 2 * Math.PI * (first + k));
  return around.flatMap((turn) => [turn - place, turn + place]).filter((s) => s > from && s < to);
}

/** The parts gathered from where the path comes out of the circle to where it goes in again. */
function excursionsOf(kept: readonly Kept[]): Excursion[] {
  const start = kept.findIndex(({ enters }) => enters !== null);
  const excursions: Excursion[] = [];
  let open: { parts: Offered[]; thetaFrom: number } | null = null;
  for (let i = 0; i < kept.length && start >= 0; i++) {
    const { part, enters, leaves } = atRound(kept, start + i);
    if (enters !== null) open = { parts: [], thetaFrom: enters };
    open?.parts.push(part);
    if (leaves === null || open === null) continue;
    excursions.push({ ...open, thetaTo: leaves });
    open = null;
  }
  return excursions;
}

const NOTHING: Touch = {
  place: null,
  curve: { kind: "arc", reach: 0, radius: 1, side: -1, aside: 0 },
  from: 0,
  to: 1,
  backwards: false,
};

/** Along the circle: the target is abreast of the axis. */
function passing(aside: number, from: number, to: number): Offered {
  const curve: Curve = { kind: "arc", reach: 0, radius: Math.abs(aside), side: -1, aside };
  return { curve, touch: NOTHING, from, to, alongFrom: 0, alongTo: 0, thetaFrom: from };
}
