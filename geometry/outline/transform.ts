/**
 * Segments and loops moved, turned, mirrored and reversed. An arc stays an arc; sources stay as they are.
 */
import type { Point } from "../language/design.ts";
import { cosSin } from "../language/exact-angles.ts";
import type { Loop, Segment } from "./segment.ts";
import { angleOf, FULL_TURN, minus, ORIGIN, plus } from "./vector.ts";

/** A rigid motion as a change of points, with what it does to an arc's angles. */
export interface Motion {
  readonly point: (point: Point) => Point;
  /** −1 for a reflection, which turns left arcs into right ones. */
  readonly handedness: 1 | -1;
}

/** A turn about the spin axis, or about another point; counter-clockwise for positive angles, exact for quarters. */
export function turn(angleRad: number, centre: Point = ORIGIN): Motion {
  const { cos, sin } = cosSin(angleRad);
  const point = (p: Point): Point => {
    const { x, y } = minus(p, centre);
    return plus(centre, { x: cos * x - sin * y, y: sin * x + cos * y });
  };
  return { point, handedness: 1 };
}

/** A turn by `k` n-ths of a full turn about the spin axis. */
export const turnByShare = (k: number, n: number): Motion => turn((FULL_TURN * k) / n);

export function shift(by: Point): Motion {
  return { point: (p) => plus(p, by), handedness: 1 };
}

/** Reflection in the x axis (y changes sign) or in the y axis (x changes sign). */
export function reflection(axis: "x" | "y"): Motion {
  // Taken from 0, so that no −0 comes of a point on the axis.
  const point =
    axis === "x" ? (p: Point) => ({ x: p.x, y: 0 - p.y }) : (p: Point) => ({ x: 0 - p.x, y: p.y });
  return { point, handedness: -1 };
}

export function movedSegment(segment: Segment, motion: Motion): Segment {
  const from = motion.point(segment.from);
  const to = motion.point(segment.to);
  if (segment.kind === "line") return { ...segment, from, to };
  const centre = motion.point(segment.centre);
  const startRad = angleOf(minus(from, centre));
  return { ...segment, from, to, centre, startRad, sweepRad: segment.sweepRad * motion.handedness };
}

/** A reflected loop runs the other way round. */
export function movedLoop<T extends Loop>(loop: T, motion: Motion): T {
  return { ...loop, segments: loop.segments.map((segment) => movedSegment(segment, motion)) };
}

export function reversedSegment(segment: Segment): Segment {
  const ends = { from: segment.to, to: segment.from };
  if (segment.kind === "line") return { ...segment, ...ends };
  const startRad = angleOf(minus(segment.to, segment.centre));
  return { ...segment, ...ends, startRad, sweepRad: -segment.sweepRad };
}

export function reversedLoop<T extends Loop>(loop: T): T {
  return { ...loop, segments: reversedSegments(loop.segments) };
}

export function reversedSegments(segments: readonly Segment[]): Segment[] {
  return segments.map(reversedSegment).reverse();
}

export const mirroredSegment = (segment: Segment, axis: "x" | "y"): Segment =>
  movedSegment(segment, reflection(axis));
export const mirroredLoop = <T extends Loop>(loop: T, axis: "x" | "y"): T =>
  movedLoop(loop, reflection(axis));
