/**
 * A floor pushes but never pulls, and gives no more than it must. Of the ways in which some of the wheels are pressed
 * and the others leave the floor, the one is sought in which no pressed wheel is pulled and no free one sinks; for
 * bodies of finite mass there is exactly one (a linear complementarity problem with a positive definite matrix).
 */

import type { Body } from "./body.ts";
import { afterImpulses, type Condition, impulsesOf, speedOf } from "./conditions.ts";

export interface Kept {
  readonly after: readonly Body[];
  /** Of the conditions that always hold. */
  readonly impulses: readonly number[];
  /** Of the floor, N·s; 0 where a wheel is not pressed. */
  readonly floor: readonly number[];
}

/** As a share of the largest impulse, and of the change of speed that is asked for: what rounding makes of a wheel that rests. */
const ROUNDING = 1e-11;

/**
 * The blow with the floor's answer; null where numbers are too coarse to tell which wheels are pressed, as with wheels at one
 * place or a robot of next to no mass.
 */
export function withFloor(
  bodies: readonly Body[],
  held: readonly Condition[],
  floor: readonly Condition[],
): Kept | null {
  const asked = Math.max(...held.map((c) => Math.abs(c.afterMPerS - speedOf(bodies, c))));
  for (let pressed = 0; pressed < 2 ** floor.length; pressed++) {
    const isPressed = (i: number) => (pressed & (1 << i)) !== 0;
    const acting = [...held, ...floor.filter((_, i) => isPressed(i))];
    const impulses = impulsesOf(bodies, acting);
    if (impulses === null) continue;
    const after = afterImpulses(bodies, acting, impulses);
    const answers = spread(impulses.slice(held.length), floor.length, isPressed);
    const largest = Math.max(...impulses.map(Math.abs));
    const pulled = answers.some((impulse) => impulse < -ROUNDING * largest);
    const sunk = floor.some((condition) => speedOf(after, condition) < -ROUNDING * asked);
    if (!pulled && !sunk) return { after, impulses: impulses.slice(0, held.length), floor: answers };
  }
  return null;
}

/** Impulses of the pressed wheels in their places among all. */
function spread(impulses: readonly number[], count: number, isPressed: (i: number) => boolean): number[] {
  let next = 0;
  return Array.from({ length: count }, (_, i) => (isPressed(i) ? (impulses[next++] ?? 0) : 0));
}
