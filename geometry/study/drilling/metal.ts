import Flatbush from "flatbush";
import type { Point } from "../../language/design.ts";
import { isInside } from "../../outline/check/inside.ts";
import type { Outline, Segment } from "../../outline/segment.ts";
import { boundsOf, distanceToSegment } from "../../outline/segment-geometry.ts";

/** How much metal there is around a point of the bar. */
export interface Metal {
  readonly segments: number;
  /** Whether the point lies within the outer loop and in no hole. */
  holds(point: Point): boolean;
  /** Distance in mm to the nearest edge of any loop, exactly; `upToMm` where all edges are farther. */
  toEdgeMm(point: Point, upToMm: number): number;
}

/** The metal of an outline, looked up by a tree of boxes. */
export function metalOf({ outer, inner }: Outline): Metal {
  const segments: readonly Segment[] = [outer, ...inner].flatMap((loop) => loop.segments);
  const tree = new Flatbush(Math.max(segments.length, 1));
  for (const segment of segments) {
    const { minX, minY, maxX, maxY } = boundsOf(segment);
    tree.add(minX, minY, maxX, maxY);
  }
  if (segments.length === 0) tree.add(0, 0, 0, 0);
  tree.finish();
  return {
    segments: segments.length,
    holds: (point) => isInside(outer, point) && !inner.some((loop) => isInside(loop, point)),
    toEdgeMm({ x, y }, upToMm) {
      let nearest = upToMm;
      for (const index of tree.search(x - upToMm, y - upToMm, x + upToMm, y + upToMm)) {
        const segment = segments[index];
        if (segment) nearest = Math.min(nearest, distanceToSegment(segment, { x, y }));
      }
      return nearest;
    },
  };
}
