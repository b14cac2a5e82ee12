import type { Problem } from "../language/problem.ts";

/** Problems in text order; of several at one place the gravest first. The input is left as it is. */
export function inTextOrder(problems: readonly Problem[]): Problem[] {
  const gravity = { error: 0, warning: 1, information: 2 };
  return [...problems].sort(
    (a, b) =>
      a.range.start - b.range.start || gravity[a.severity] - gravity[b.severity] || a.range.end - b.range.end,
  );
}

/**
 * Join the problems of a bar with those of its variants: one that the bar itself has is told once, one that only
 * variants have names them.
 */
export function mergeProblems(
  base: readonly Problem[],
  ofVariants: readonly { readonly variant: string; readonly problems: readonly Problem[] }[],
): Problem[] {
  const known = new Set(base.map(placeOf));
  const added = new Map<string, { problem: Problem; variants: string[] }>();
  for (const { variant, problems } of ofVariants) {
    for (const problem of problems) {
      // Not by message: the same requirement failing by another amount is news only where the bar itself holds it.
      if (known.has(placeOf(problem))) continue;
      const key = `${placeOf(problem)} ${problem.message}`;
      const entry = added.get(key) ?? { problem, variants: [] };
      entry.variants.push(variant);
      added.set(key, entry);
    }
  }
  const told = [...added.values()].map(({ problem, variants }) => ({
    ...problem,
    message: `In ${variants.map((name) => `"${name}"`).join(", ")}: ${problem.message}`,
  }));
  return inTextOrder([...base, ...told]);
}

function placeOf({ code, range }: Problem): string {
  return `${code} ${range.start} ${range.end}`;
}
