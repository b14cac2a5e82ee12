import type { Loop } from "../outline/segment.ts";
import { type Bounds, boundsOf, farthestFromAxis, unitedBounds } from "../outline/segment-geometry.ts";
import { norm } from "../outline/vector.ts";

/** How far a loop reaches, in mm. */
export interface Extent {
  readonly bounds: Bounds;
  /** From the spin axis to the farthest point. */
  readonly maxRadiusMm: number;
}

/**
 * The exact extent of a loop; all 0, at the spin axis, for a loop without segments. Corners come first: after them
 * only an arc of a circle that reaches farther can add anything, which few do, so that a loop of thousands of segments
 * is measured without a heap of small boxes.
 */
export function extentOf(loop: Loop): Extent {
  let { bounds, maxRadiusMm } = extentOfCorners(loop);
  for (const segment of loop.segments) {
    if (segment.kind === "line") continue;
    const { centre, radiusMm } = segment;
    if (sticksOut(bounds, centre.x, centre.y, radiusMm)) bounds = unitedBounds(bounds, boundsOf(segment));
    if (norm(centre) + radiusMm <= maxRadiusMm) continue;
    maxRadiusMm = Math.max(maxRadiusMm, farthestFromAxis(segment).distanceMm);
  }
  return { bounds, maxRadiusMm };
}

function extentOfCorners({ segments }: Loop): Extent {
  const { x = 0, y = 0 } = segments[0]?.from ?? {};
  let [minX, minY, maxX, maxY, maxRadiusMm] = [x, y, x, y, 0];
  for (const { from } of segments) {
    minX = Math.min(minX, from.x);
    minY = Math.min(minY, from.y);
    maxX = Math.max(maxX, from.x);
    maxY = Math.max(maxY, from.y);
    maxRadiusMm = Math.max(maxRadiusMm, norm(from));
  }
  return { bounds: { minX, minY, maxX, maxY }, maxRadiusMm };
}

function sticksOut({ minX, minY, maxX, maxY }: Bounds, x: number, y: number, radiusMm: number): boolean {
  return x - radiusMm < minX || y - radiusMm < minY || x + radiusMm > maxX || y + radiusMm > maxY;
}
