import type { Point } from "../../language/design.ts";

/**
 * For each point the index of the one that stands for it: the earliest of all that hang together by steps no longer
 * than the tolerance.
 */
export function samePoints(points: readonly Point[], toleranceMm: number): number[] {
  const standsFor = points.map((_, i) => i);
  const rootOf = (i: number): number => {
    let root = i;
    for (let next = standsFor[root] ?? root; next !== root; next = standsFor[root] ?? root) root = next;
    standsFor[i] = root;
    return root;
  };
  const sorted = points.map((point, index) => ({ point, index, key: keyOf(point) }));
  sorted.sort((a, b) => a.key - b.key);
  for (const [place, { point, index, key }] of sorted.entries()) {
    for (let later = place + 1; later < sorted.length; later++) {
      const other = sorted[later];
      if (other === undefined || other.key - key > toleranceMm) break;
      const isSame = Math.hypot(other.point.x - point.x, other.point.y - point.y) <= toleranceMm;
      if (!isSame) continue;
      const [a, b] = [rootOf(index), rootOf(other.index)];
      standsFor[Math.max(a, b)] = Math.min(a, b);
    }
  }
  return points.map((_, i) => rootOf(i));
}

/** The place along a slanted line: points of a drawing share an x or a y far more often than this. */
const keyOf = ({ x, y }: Point): number => x * Math.cos(1) + y * Math.sin(1);
