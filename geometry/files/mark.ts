import type { Point } from "../language/design.ts";
import type { Outline } from "../outline/segment.ts";
import { type Bounds, boundsOfLoop, unitedBounds } from "../outline/segment-geometry.ts";

/** What is drawn for people and not cut: a cross on the spin axis, and the part's name. Lengths in mm. */
export interface Mark {
  readonly cross: readonly (readonly [from: Point, to: Point])[];
  /** Where the name's baseline begins, how tall its capitals are. */
  readonly name: { readonly at: Point; readonly heightMm: number };
}

/** What a part without a readable name is called. */
export const UNNAMED = "unnamed bar";

/** Half the cross, in mm: seen at a glance on a bar, and inside most bores. */
const LARGEST_ARM_MM = 5;

/** Height of the name, in mm, where there is room. */
const LARGEST_NAME_MM = 4;

/** No common lettering is wider than tall, so a name of n letters is at most n heights long. */
const WIDEST_LETTER = 1;

/**
 * Where the cross and a name of so many letters go. The name stands to the right of the bore, or in the lower left
 * corner where there is no room for it, and always within the outline's own extents, so that it never makes the
 * drawing larger than the part.
 */
export function markOf(outline: Outline, letters: number): Mark {
  const box = cutExtents(outline);
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const arm = Math.min(LARGEST_ARM_MM, width / 4, height / 4);
  const clear = hubBounds(outline, arm);
  const start = clear.maxX + arm;
  const besideHub = box.maxX - start > width / 5 && box.minY < -arm && box.maxY > arm && start > box.minX;
  const room = besideHub ? box.maxX - start : width;
  const heightMm = Math.min(LARGEST_NAME_MM, arm, room / (letters * WIDEST_LETTER));
  const at = besideHub ? { x: start, y: -heightMm / 2 } : { x: box.minX, y: box.minY };
  return { cross: crossOf(arm), name: { at, heightMm } };
}

/** The exact box, in mm, around everything that is cut. */
function cutExtents(outline: Outline): Bounds {
  return outline.inner.map(boundsOfLoop).reduce(unitedBounds, boundsOfLoop(outline.outer));
}

/** The box, in mm, around the whole drawing: the part's own, widened to the cross should the axis lie outside it. */
export function drawnExtents(outline: Outline, { cross }: Mark): Bounds {
  return unitedBounds(cutExtents(outline), crossExtents(cross));
}

/** The box around the lines of a cross, in their own unit. */
export function crossExtents(cross: Mark["cross"]): Bounds {
  const xs = cross.flat().map(({ x }) => x);
  const ys = cross.flat().map(({ y }) => y);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}

/** What the name must keep clear of in the middle: the cross and the bore. */
function hubBounds({ inner }: Outline, arm: number): Bounds {
  const cross: Bounds = { minX: -arm, minY: -arm, maxX: arm, maxY: arm };
  return inner
    .filter(({ kind }) => kind === "bore")
    .map(boundsOfLoop)
    .reduce(unitedBounds, cross);
}

function crossOf(arm: number): Mark["cross"] {
  return [
    [
      { x: -arm, y: 0 },
      { x: arm, y: 0 },
    ],
    [
      { x: 0, y: -arm },
      { x: 0, y: arm },
    ],
  ];
}
