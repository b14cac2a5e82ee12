import { boxGap, forNearPairs } from "./near-pairs.ts";
import type { NamedLoop, PlacedSegment } from "./placed-segments.ts";
import { type Gap, gapBetween } from "./segment-distance.ts";

/** The metal between two loops at its narrowest; `a` has the lower number. */
export interface Bridge {
  readonly a: NamedLoop;
  readonly b: NamedLoop;
  readonly gap: Gap;
}

/** For each two loops of interest that come nearer than `leastMm`, their narrowest bridge, exactly. */
export function bridgesBelow(
  segments: readonly PlacedSegment[],
  leastMm: number,
  isOfInterest: (a: NamedLoop, b: NamedLoop) => boolean,
): Bridge[] {
  const narrowest = new Map<string, Bridge>();
  const visit = (first: PlacedSegment, second: PlacedSegment) => {
    const [a, b] = [first.of, second.of];
    if (a === b || !isOfInterest(a, b)) return;
    const pair = `${a.number} ${b.number}`;
    const known = narrowest.get(pair)?.gap.distanceMm ?? leastMm;
    if (boxGap(first.box, second.box) >= known) return;
    const gap = gapBetween(first.segment, second.segment);
    if (gap.distanceMm < known) narrowest.set(pair, { a, b, gap });
  };
  // A bridge has a hole on one side at least: the outline's own segments need not look for each other.
  forNearPairs(segments, leastMm, visit, ({ of }) => of.number !== 0);
  return [...narrowest.values()];
}
