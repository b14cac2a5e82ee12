import Flatbush from "flatbush";
import type { Point } from "../../language/design.ts";
import type { Loop } from "../segment.ts";
import { boundsOf } from "../segment-geometry.ts";
import { isNearer } from "./apart.ts";

/** Tells whether no point of a loop is nearer than a distance. A static tree of boxes looks at the nearest first. */
export type Clearance = (point: Point, distanceMm: number) => boolean;

export function clearanceOf({ segments }: Loop): Clearance {
  const tree = new Flatbush(segments.length);
  for (const { minX, minY, maxX, maxY } of segments.map(boundsOf)) tree.add(minX, minY, maxX, maxY);
  tree.finish();
  return (point, distanceMm) => {
    const isTooNear = (place: number): boolean => {
      const segment = segments[place];
      return segment !== undefined && isNearer(segment, point, distanceMm);
    };
    return tree.neighbors(point.x, point.y, 1, distanceMm, isTooNear).length === 0;
  };
}
