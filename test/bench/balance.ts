import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readSource } from "../../geometry/analysis/source.ts";
import { balanceBy } from "../../geometry/study/balance-by.ts";
import type { BenchCase } from "./harness.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "../../samples/brass-limpet-one-tooth.bar"), "utf8");

/** From a file off balance to its edits, the check of the changed file included. */
function solve(change: readonly [from: string, to: string], names: readonly string[]): () => number {
  const text = SAMPLE.replace(...change);
  return () => {
    const result = balanceBy(readSource(text), { names });
    return (result.solved ? result : result.nearest)?.after.eccentricityMm ?? Number.NaN;
  };
}

export const cases: readonly BenchCase[] = [
  {
    area: "balance",
    name: "balance by two lets",
    inputs: "the one-tooth sample, its tail 20 mm short",
    run: solve(["let tail = 89.77 mm", "let tail = 70 mm"], ["tail", "lower"]),
  },
  {
    area: "balance",
    name: "balance by one let",
    inputs: "the same",
    run: solve(["let tail = 89.77 mm", "let tail = 70 mm"], ["tail"]),
  },
  {
    area: "balance",
    name: "two lets whose bounds keep it from balance",
    inputs: "the one-tooth sample, 15 mm longer",
    run: solve(["let reach = 125 mm", "let reach = 140 mm"], ["tail", "lower"]),
  },
];
