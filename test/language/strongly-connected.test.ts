import fc from "fast-check";
import { expect, it } from "vitest";
import { stronglyConnected } from "../../geometry/language/evaluate/strongly-connected.ts";

const SEED = 31_337;
const graphs = fc
  .integer({ min: 1, max: 9 })
  .chain((size) =>
    fc.array(fc.uniqueArray(fc.integer({ min: 0, max: size - 1 })), { minLength: size, maxLength: size }),
  );

/** Which nodes can be reached from which, by following edges until nothing new turns up. */
function reachable(graph: readonly (readonly number[])[], from: number): ReadonlySet<number> {
  const found = new Set(graph[from]);
  for (const node of found) for (const next of graph[node] ?? []) found.add(next);
  return found;
}

it("puts nodes that reach each other together, and each group after what it depends on", () => {
  fc.assert(
    fc.property(graphs, (graph) => {
      const nodes = graph.map((_, node) => node);
      const groups = stronglyConnected(nodes, (node) => graph[node] ?? []);
      expect(groups.flat().sort((a, b) => a - b)).toEqual(nodes);
      const place = new Map(groups.flatMap((group, index) => group.map((node) => [node, index] as const)));
      for (const a of nodes) {
        for (const b of reachable(graph, a)) {
          const together = a === b || reachable(graph, b).has(a);
          expect(place.get(a) === place.get(b)).toBe(together);
          expect((place.get(a) ?? 0) >= (place.get(b) ?? 0)).toBe(true);
        }
      }
    }),
    { seed: SEED, numRuns: 500 },
  );
});

it("follows a chain of a hundred thousand", () => {
  const size = 100_000;
  const nodes = Array.from({ length: size }, (_, node) => node);
  const groups = stronglyConnected(nodes, (node) => (node + 1 < size ? [node + 1] : []));
  expect(groups[0]).toEqual([size - 1]);
  expect(groups).toHaveLength(size);
});
