/** Where a robot steers with all wheels down: the yaw rate at which one lifts, over the ground speed, both ways of the bar. */
import { type Steered, yawLimit } from "./handling.ts";

export interface SteeringPoint {
  readonly groundMPerS: number;
  /** With the front edge moving up, and down; Infinity where turning shifts no load. Below the line all wheels stay down. */
  readonly edgeUpRadPerS: number;
  readonly edgeDownRadPerS: number;
}

/**
 * Evenly spaced ground speeds from standing to the fastest.
 * @param count two at least
 */
export function steeringChart(robot: Steered, fastestMPerS: number, count: number): readonly SteeringPoint[] {
  return Array.from({ length: count }, (_, i) => {
    const groundMPerS = (fastestMPerS * i) / (count - 1);
    return {
      groundMPerS,
      edgeUpRadPerS: yawLimit({ ...robot, edge: "up" }, groundMPerS).radPerS,
      edgeDownRadPerS: yawLimit({ ...robot, edge: "down" }, groundMPerS).radPerS,
    };
  });
}
