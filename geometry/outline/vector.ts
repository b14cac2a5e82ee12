/**
 * Points as plane vectors. x to the right, y up; angles counter-clockwise from +x; "left" is counter-clockwise.
 */
import type { Point } from "../language/design.ts";

export const ORIGIN: Point = { x: 0, y: 0 };

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const times = (a: Point, factor: number): Point => ({ x: a.x * factor, y: a.y * factor });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/** Positive where `b` points to the left of `a`. */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

export const norm = (a: Point): number => Math.hypot(a.x, a.y);
export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
export const midpoint = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** The point a share of the way from `a` to `b`. */
export const between = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

/** A quarter turn to the left. */
export const leftOf = (a: Point): Point => ({ x: -a.y, y: a.x });

/** The vector scaled to length 1. The zero vector has no direction and stays zero. */
export function unit(a: Point): Point {
  const length = norm(a);
  return length === 0 ? ORIGIN : { x: a.x / length, y: a.y / length };
}

export const direction = (from: Point, to: Point): Point => unit(minus(to, from));
export const angleOf = (a: Point): number => Math.atan2(a.y, a.x);

/** The angle by which one turns from direction `a` to direction `b`, −π to π, positive to the left. */
export const turnBetween = (a: Point, b: Point): number => Math.atan2(cross(a, b), dot(a, b));

/** The point at a distance and direction from another. */
export const polar = (centre: Point, radius: number, angleRad: number): Point => ({
  x: centre.x + radius * Math.cos(angleRad),
  y: centre.y + radius * Math.sin(angleRad),
});

export const FULL_TURN = 2 * Math.PI;

/** An angle brought into 0 (included) to 2π (excluded). */
export function wrapped(angleRad: number): number {
  const angle = angleRad - FULL_TURN * Math.floor(angleRad / FULL_TURN);
  return angle >= FULL_TURN ? 0 : angle;
}
