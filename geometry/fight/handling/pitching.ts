/** What spinning up and stopping do to the front: the frame gets back the torque that turns the bar. */
import { GRAVITY } from "../impact/estimates.ts";
import type { Edge } from "../impact/strike.ts";

export interface Pitching {
  /** Positive lifts the front. */
  readonly spinUpNM: number;
  readonly brakingNM: number;
}

/**
 * The torque on the robot for a torque on its bar. With the front edge moving up, spinning up presses the front down and
 * braking lifts it; with the front edge moving down the other way round.
 * @param torqueNM on the bar, without a sign
 */
export function pitchingOf(torqueNM: number, edge: Edge): Pitching {
  const spinUpNM = edge === "up" ? -torqueNM : torqueNM;
  return { spinUpNM, brakingNM: -spinUpNM };
}

/** The even torque that takes a bar to or from its spin in a time, I·ω/t. */
export function meanTorqueNM(angularMomentumKgM2PerS: number, seconds: number): number {
  return angularMomentumKgM2PerS / seconds;
}

/**
 * The least time in which a bar can be brought to its spin, or stopped, evenly, so that no wheel lifts: I·ω/(m·g·d).
 * @param supportM d, level from the centre of mass to the wheels that stay down: those at the rear where the front is lifted
 */
export function leastTimeS(angularMomentumKgM2PerS: number, massKg: number, supportM: number): number {
  return angularMomentumKgM2PerS / (massKg * GRAVITY * supportM);
}
