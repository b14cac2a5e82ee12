import type { Bounds } from "../segment-geometry.ts";

/** Something with a box around it. */
export interface Boxed {
  readonly box: Bounds;
}

/**
 * Calls `visit` once for each two items whose boxes are no farther apart than `gapMm` along either axis, the earlier
 * item first. The boxes are swept along the axis on which fewer of them lie over each other, so that the rows of short
 * segments that bars are made of cost little more than a sort.
 */
export function forNearPairs<T extends Boxed>(
  items: readonly T[],
  gapMm: number,
  visit: (earlier: T, later: T) => void,
): void {
  const sides = crowding(items, sidesAlongX) <= crowding(items, sidesAlongY) ? sidesAlongX : sidesAlongY;
  const swept = items
    .map((item, place) => ({ item, place, ...sides(item.box) }))
    .sort((a, b) => a.low - b.low || a.place - b.place);
  for (const [i, a] of swept.entries()) {
    for (let k = i + 1; k < swept.length; k++) {
      const b = swept[k];
      if (b === undefined || b.low > a.high + gapMm) break;
      if (boxGap(a.item.box, b.item.box) > gapMm) continue;
      if (a.place < b.place) visit(a.item, b.item);
      else visit(b.item, a.item);
    }
  }
}

interface Sides {
  readonly low: number;
  readonly high: number;
}
const sidesAlongX = ({ minX, maxX }: Bounds): Sides => ({ low: minX, high: maxX });
const sidesAlongY = ({ minY, maxY }: Bounds): Sides => ({ low: minY, high: maxY });

/** How many boxes lie over each other along an axis, on average: their widths over the width of all. */
function crowding(items: readonly Boxed[], sides: (box: Bounds) => Sides): number {
  let [least, most, sum] = [Infinity, -Infinity, 0];
  for (const { box } of items) {
    const { low, high } = sides(box);
    least = Math.min(least, low);
    most = Math.max(most, high);
    sum += high - low;
  }
  return most > least ? sum / (most - least) : Infinity;
}

/** The larger of the gaps between two boxes along x and along y: no more than the distance between what they hold. */
export function boxGap(a: Bounds, b: Bounds): number {
  return Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
}
