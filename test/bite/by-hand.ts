/** What contacts that are worked out by hand have in common. */
import type { Loop } from "../../geometry/outline/segment.ts";
import { type Pair, polygon } from "../support/loops.ts";
import { behind, offered } from "./spin.ts";

/** The radius of tips, and of what lies deep between them. */
export const TIP = 100;
export const ROOT = 40;

/** Radial faces, evenly round; the metal behind each falls to the root at once. */
export function needles(count: number): Loop {
  const points = Array.from({ length: count }, (_, i): Pair[] => {
    const face = i / count;
    const chords = Array.from({ length: 9 }, (_, k) => behind(ROOT, face + 1e-6 + (k * 0.99) / count / 9));
    return [behind(ROOT, face), behind(TIP, face), ...chords];
  });
  return polygon(offered(points.flat()));
}

/** The place where a function that grows through 0 does so. */
export function rootOf(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 100; i++) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) high = middle;
    else low = middle;
  }
  return low;
}
