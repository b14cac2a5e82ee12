/**
 * How a robot with an upright bar steers: x ahead, y left, z up, the spin axis across. Turning makes the bar lean the robot
 * over, and so does the load shift of cornering; a wheel lifts where the two together take all load off one side.
 * Source: gyroscopic moment, and moments about the ground of a rigid vehicle on two rows of wheels.
 */
import { GRAVITY } from "../impact/estimates.ts";
import type { Edge } from "../impact/strike.ts";
import { gyroscopicMomentNM, type Vector3 } from "./gyroscope.ts";

export interface Steered {
  /** Of the whole robot, its bar included. */
  readonly massKg: number;
  /** Between the middles of the left and the right wheels; the centre of mass is taken to be midway. */
  readonly trackM: number;
  /** Of the centre of mass above the floor. */
  readonly centreHeightM: number;
  /** Of the bar and all that turns with it, I·ω, without a sign. */
  readonly angularMomentumKgM2PerS: number;
  /** Which way the bar's front edge moves, as the robot stands. */
  readonly edge: Edge;
}

/** The wheel that lifts first: on the side to which the robot turns, or on the other. */
export type LiftedSide = "inner" | "outer";

export interface YawLimit {
  /** The yaw rate at which a wheel lifts; Infinity where turning shifts no load at all. */
  readonly radPerS: number;
  readonly lifts: LiftedSide | null;
}

/** The angular momentum of the bar: about −y with the front edge moving up, about +y with it moving down. */
export function barMomentum(angularMomentumKgM2PerS: number, edge: Edge): Vector3 {
  return { x: 0, y: edge === "up" ? -angularMomentumKgM2PerS : angularMomentumKgM2PerS, z: 0 };
}

/**
 * The moment about +x, towards the right side, for each rad/s of turning left: of the bar, and of cornering at a ground speed
 * (m·u·h; negative when driving backwards).
 */
export function rollPerYaw(robot: Steered, groundMPerS: number): { bar: number; cornering: number } {
  const momentum = barMomentum(robot.angularMomentumKgM2PerS, robot.edge);
  const bar = gyroscopicMomentNM(momentum, { x: 0, y: 0, z: 1 }).x;
  return { bar, cornering: robot.massKg * groundMPerS * robot.centreHeightM };
}

/**
 * The yaw rate at which a wheel lifts, m·g·w/2 over the moment of each rad/s. The same to the left and to the right. No
 * grip is looked at: a robot that slides sideways before it does not get there by cornering.
 */
export function yawLimit(robot: Steered, groundMPerS: number): YawLimit {
  const { bar, cornering } = rollPerYaw(robot, groundMPerS);
  const outwards = bar + cornering;
  const radPerS = (robot.massKg * GRAVITY * robot.trackM) / 2 / Math.abs(outwards);
  if (outwards === 0) return { radPerS: Number.POSITIVE_INFINITY, lifts: null };
  return { radPerS, lifts: outwards > 0 ? "inner" : "outer" };
}

/**
 * The ground speed at which bar and cornering cancel, I·ω/(m·h): driving ahead with the front edge moving up, backwards
 * (negative) with it moving down.
 */
export function evenSpeedMPerS(robot: Steered): number {
  const speed = robot.angularMomentumKgM2PerS / (robot.massKg * robot.centreHeightM);
  return robot.edge === "up" ? speed : -speed;
}

/**
 * The robot on its back, rolled over: the bar's front edge moves the other way.
 * @param centreHeightM of the centre of mass above the floor as it lies
 */
export function inverted(robot: Steered, centreHeightM: number): Steered {
  return { ...robot, centreHeightM, edge: robot.edge === "up" ? "down" : "up" };
}
