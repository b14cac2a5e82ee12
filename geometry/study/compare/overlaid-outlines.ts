import type { Loop } from "../../outline/segment.ts";
import { boundsOfLoop, unitedBounds } from "../../outline/segment-geometry.ts";

/** Outlines to be laid over each other, the spin axis of all at (0, 0). */
export interface OverlaidOutlines<O> {
  /** One for each bar; `null` for one whose outline could not be built. */
  readonly outlines: readonly (O | null)[];
  /** The rectangle around all of them: least x, least y, greatest x, greatest y. */
  readonly boundsMm: readonly [number, number, number, number];
}

/** `null` where there is nothing to lay over. */
export function overlaidOutlines<O extends { readonly outer: Loop }>(
  outlines: readonly (O | null)[],
): OverlaidOutlines<O> | null {
  const bounds = outlines.flatMap((outline) => (outline ? boundsOfLoop(outline.outer) : []));
  if (bounds.length === 0) return null;
  const { minX, minY, maxX, maxY } = bounds.reduce(unitedBounds);
  return { outlines, boundsMm: [minX, minY, maxX, maxY] };
}
