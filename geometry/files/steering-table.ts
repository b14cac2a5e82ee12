import type { Analysis } from "../analysis/analyse.ts";
import { number, type UnitSystem, unitOf } from "../figures/present.ts";

/** Where a wheel lifts over the ground speed, and why one way of the bar is harder. */
export interface SteeringTable {
  readonly speedUnit: string;
  /** Yaw rates in degrees a second, with the front edge moving up and down; none where the file has no ground speed. */
  readonly rows: readonly { readonly ground: string; readonly up: string; readonly down: string }[];
  readonly words: string;
}

/** Null without a robot of which enough is said. */
export function steeringTable({ assessment }: Analysis, system: UnitSystem): SteeringTable | null {
  const { robot } = assessment.fight;
  if (robot === null || robot.steeringWords === null) return null;
  const speed = unitOf("speed", system);
  const rate = (degPerS: number) => (Number.isFinite(degPerS) ? number(degPerS, 4) : "none lifts");
  const rows = (robot.steering ?? []).map(({ groundMPerS, edgeUpDegPerS, edgeDownDegPerS }) => ({
    ground: number(groundMPerS / speed.perUnit, 3),
    up: rate(edgeUpDegPerS),
    down: rate(edgeDownDegPerS),
  }));
  return { speedUnit: speed.unit, rows, words: robot.steeringWords };
}
