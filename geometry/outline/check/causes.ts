/** One problem for each cause: a statement that makes several loops, or several copies of a path, is at fault once. */
import type { NamedLoop } from "./placed-segments.ts";

/** The first item of each key, in order. */
export function firstOfEach<T>(items: readonly T[], keyOf: (item: T) => string): T[] {
  const firsts = new Map<string, T>();
  for (const item of items) {
    const key = keyOf(item);
    if (!firsts.has(key)) firsts.set(key, item);
  }
  return [...firsts.values()];
}

/** Which statements some loops come from. */
export function sourcesKey(...loops: readonly NamedLoop[]): string {
  return loops.map(({ loop: { source } }) => `${source.start}-${source.end}`).join(" ");
}

/** Two loops with the one written later last: that is where a problem between them is put. */
export function laterLast([a, b]: readonly [NamedLoop, NamedLoop]): [NamedLoop, NamedLoop] {
  return a.loop.source.start > b.loop.source.start ? [b, a] : [a, b];
}

/** How a problem at a hole speaks of the other hole. */
export function otherHole(other: NamedLoop, hole: NamedLoop): string {
  if (other.name === "bore") return "the bore";
  if (sourcesKey(other) === sourcesKey(hole)) return "the next hole of its ring";
  return other.name === hole.name ? `another ${other.name}` : `a ${other.name}`;
}
