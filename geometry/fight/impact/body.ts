/** Rigid bodies that move in the plane of the bar: x ahead, y up, turning counter-clockwise, which lifts what is ahead. */
import type { Point } from "../../language/design.ts";
import { cross, dot, leftOf, minus, plus, times } from "../../outline/vector.ts";

export interface Body {
  /** Infinity for a body that nothing moves. */
  readonly massKg: number;
  /** About its centre of mass; Infinity for a body that nothing turns. */
  readonly inertiaKgM2: number;
  readonly centreM: Point;
  readonly velocityMPerS: Point;
  readonly spinRadPerS: number;
}

/** The velocity of the point of a body that is at a place: v + ω × r. */
export function velocityAt(body: Body, atM: Point): Point {
  return plus(body.velocityMPerS, times(leftOf(minus(atM, body.centreM)), body.spinRadPerS));
}

/** The body after an impulse on one of its points; its place is the same, a blow takes no time. */
export function pushed(body: Body, atM: Point, impulseNS: Point): Body {
  const arm = minus(atM, body.centreM);
  return {
    ...body,
    velocityMPerS: plus(body.velocityMPerS, times(impulseNS, 1 / body.massKg)),
    spinRadPerS: body.spinRadPerS + cross(arm, impulseNS) / body.inertiaKgM2,
  };
}

/**
 * How fast a point of the body moves along `to` for an impulse of 1 N·s along `from` on another of its points:
 * the entry of (M + r × r/I) between two directions.
 */
export function mobility(body: Body, fromM: Point, from: Point, toM: Point, to: Point): number {
  const turned = cross(minus(fromM, body.centreM), from) * cross(minus(toM, body.centreM), to);
  return dot(from, to) / body.massKg + turned / body.inertiaKgM2;
}

/** ½·m·v² + ½·I·ω²; a body that nothing moves has none. */
export function kineticEnergyJ({ massKg, inertiaKgM2, velocityMPerS, spinRadPerS }: Body): number {
  const moving = Number.isFinite(massKg) ? massKg * dot(velocityMPerS, velocityMPerS) : 0;
  const turning = Number.isFinite(inertiaKgM2) ? inertiaKgM2 * spinRadPerS ** 2 : 0;
  return (moving + turning) / 2;
}
