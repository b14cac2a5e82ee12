/**
 * What holds between bodies at a blow, each as one number that must come out: the points of bar and robot at the axle
 * stay together, the tooth leaves its target at e times the speed at which it came, a wheel does not sink into the
 * floor. Each is kept by an impulse along one line. All act in the same instant: J·M⁻¹·Jᵀ·λ = wanted − present.
 * Source: impulse and momentum of rigid bodies with Newton's coefficient of restitution, no friction.
 */
import type { Point } from "../../language/design.ts";
import { dot, times } from "../../outline/vector.ts";
import { type Body, mobility, pushed, velocityAt } from "./body.ts";
import { solveLinear } from "./solve-linear.ts";

/** Where and along which unit vector a positive impulse of the condition pushes one body. */
export interface Push {
  /** Its place in the list of bodies. */
  readonly body: number;
  readonly atM: Point;
  readonly along: Point;
}

export interface Condition {
  readonly pushes: readonly Push[];
  /** The sum of the pushed points' velocities along their pushes, after the blow. */
  readonly afterMPerS: number;
}

/** The impulses that keep all conditions, in their order; null for conditions that depend on one another. */
export function impulsesOf(
  bodies: readonly Body[],
  conditions: readonly Condition[],
): readonly number[] | null {
  const matrix = conditions.map((a) => conditions.map((b) => coupling(bodies, a, b)));
  const wanted = conditions.map((c) => c.afterMPerS - speedOf(bodies, c));
  return solveLinear(matrix, wanted);
}

/** The bodies after the impulses of the conditions. */
export function afterImpulses(
  bodies: readonly Body[],
  conditions: readonly Condition[],
  impulses: readonly number[],
): readonly Body[] {
  return bodies.map((body, index) => {
    const own = conditions.flatMap(({ pushes }, i) =>
      pushes.filter((push) => push.body === index).map((push) => ({ push, size: impulses[i] ?? 0 })),
    );
    return own.reduce((moved, { push, size }) => pushed(moved, push.atM, times(push.along, size)), body);
  });
}

/** The speed that a condition is about, as the bodies move. */
export function speedOf(bodies: readonly Body[], { pushes }: Condition): number {
  return pushes.reduce((sum, { body, atM, along }) => {
    const moving = bodies[body];
    return moving ? sum + dot(velocityAt(moving, atM), along) : sum;
  }, 0);
}

/** How much speed of `b` an impulse of 1 N·s of `a` makes. */
function coupling(bodies: readonly Body[], a: Condition, b: Condition): number {
  let sum = 0;
  for (const from of a.pushes) {
    for (const to of b.pushes) {
      const body = bodies[from.body];
      if (body && from.body === to.body) sum += mobility(body, from.atM, from.along, to.atM, to.along);
    }
  }
  return sum;
}
