/** Where a tooth meets its opponent and which way it pushes, seen from the robot's right: x ahead, y up, axle at (0, 0). */
import type { Point } from "../../language/design.ts";
import { leftOf, norm, plus, polar, times, unit } from "../../outline/vector.ts";

/** Which way the bar's front edge moves. */
export type Edge = "up" | "down";

export interface Strike {
  readonly atM: Point;
  /** Unit vector of the push on the opponent. */
  readonly along: Point;
}

/**
 * A strike at a radius, at an angle above level ahead. The tooth pushes the way it moves: level with the axle straight
 * up or down, at the lowest point ahead or back.
 * @param skidRad the strike angle, between the contact normal and the way the tooth moves: the push leans away from the axle by it
 */
export function strikeAt(radiusM: number, aboveLevelRad: number, edge: Edge, skidRad = 0): Strike {
  const atM = polar({ x: 0, y: 0 }, radiusM, aboveLevelRad);
  const out = unit(atM);
  const along = plus(times(wayOf(atM, edge), Math.cos(skidRad)), times(out, Math.sin(skidRad)));
  return { atM, along };
}

/**
 * A strike at a height above the axle, ahead of it; `null` where the tip circle does not reach so high or low.
 */
export function strikeAtHeight(radiusM: number, aboveAxleM: number, edge: Edge, skidRad = 0): Strike | null {
  if (Math.abs(aboveAxleM) > radiusM) return null;
  return strikeAt(radiusM, Math.asin(aboveAxleM / radiusM), edge, skidRad);
}

/** The way a point of the bar moves. */
function wayOf(atM: Point, edge: Edge): Point {
  const turned = times(leftOf(atM), 1 / norm(atM));
  return edge === "up" ? turned : times(turned, -1);
}

/** The sign of the bar's spin, counter-clockwise seen from the right. */
export const spinSign = (edge: Edge): 1 | -1 => (edge === "up" ? 1 : -1);
