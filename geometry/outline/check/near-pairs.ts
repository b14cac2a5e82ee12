import Flatbush from "flatbush";
import type { Bounds } from "../segment-geometry.ts";

/** Something with a box around it. */
export interface Boxed {
  readonly box: Bounds;
}

/**
 * Calls `visit` once for each two items whose boxes are no farther apart than `gapMm` along either axis, the earlier
 * item first. A static tree of boxes finds them, so that a wheel of ten thousand short segments, many of them above
 * each other along x and along y, costs little more than a sort.
 * @param isSought only pairs with at least one such item are visited
 */
export function forNearPairs<T extends Boxed>(
  items: readonly T[],
  gapMm: number,
  visit: (earlier: T, later: T) => void,
  isSought: (item: T) => boolean = () => true,
): void {
  if (items.length < 2) return;
  const tree = new Flatbush(items.length);
  for (const { box } of items) tree.add(box.minX, box.minY, box.maxX, box.maxY);
  tree.finish();
  const sought = items.map(isSought);
  for (const [place, item] of items.entries()) {
    if (!sought[place]) continue;
    const { minX, minY, maxX, maxY } = item.box;
    // An earlier item that is sought itself has visited this pair.
    const isNew = (other: number): boolean => other > place || (other < place && !sought[other]);
    for (const found of tree.search(minX - gapMm, minY - gapMm, maxX + gapMm, maxY + gapMm, isNew)) {
      const other = items[found];
      if (other === undefined) continue;
      if (place < found) visit(item, other);
      else visit(other, item);
    }
  }
}

/** The larger of the gaps between two boxes along x and along y: no more than the distance between what they hold. */
export function boxGap(a: Bounds, b: Bounds): number {
  return Math.max(a.minX - b.maxX, b.minX - a.maxX, a.minY - b.maxY, b.minY - a.maxY);
}
