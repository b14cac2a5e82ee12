import type { Point } from "../../language/design.ts";
import type { Loop } from "../../outline/segment.ts";
import { FULL_TURN } from "../../outline/vector.ts";
import { reachOfEdge } from "./edge-moments.ts";

/**
 * What stock left along the outer edge can do. A blank is cut larger by s all round; the stock is then ground off again but
 * for what is left on the light side. What can be left, anything from 0 to s along each bit of the edge, moves the
 * static moment anywhere within a convex set, s times that of 1 mm; its support in a direction w is ρt·∫max(0, p·w)ds.
 */
export interface StockReach {
  /** Support of the set for 1 mm of stock, in g·mm, for directions evenly round. */
  readonly supports: readonly { readonly towards: Point; readonly gMmPerMm: number }[];
}

/** Between two directions the support is off by no more than 1 − cos(0.5°), 4e-5. */
const DIRECTIONS = 360;

export function stockReach(outer: Loop, gPerMm2: number): StockReach {
  const supports = Array.from({ length: DIRECTIONS }, (_, i) => {
    const angle = (i / DIRECTIONS) * FULL_TURN;
    const towards = { x: Math.cos(angle), y: Math.sin(angle) };
    const reach = outer.segments.reduce((sum, segment) => sum + reachOfEdge(segment, towards), 0);
    return { towards, gMmPerMm: reach * gPerMm2 };
  });
  return { supports };
}

/**
 * The least stock, in mm, with which a part of this static moment can be brought to within `allowedGMm` by grinding
 * alone: what is left has to lie opposite. By the supports of both sets, the disc of what is allowed and the stock's.
 */
export function stockNeededMm({ supports }: StockReach, moment: Point, allowedGMm: number): number {
  let most = 0;
  for (const { towards, gMmPerMm } of supports) {
    const lacking = -(moment.x * towards.x + moment.y * towards.y) - allowedGMm;
    if (lacking > 0) most = Math.max(most, lacking / gMmPerMm);
  }
  return most;
}
