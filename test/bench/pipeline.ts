import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { syntheticBar } from "../support/synthetic-bar.ts";
import type { BenchCase } from "./harness.ts";

/** From text to every number, 40 closing speeds included, as each keystroke in the editor does. */
function wholePipeline(segments: number): () => number {
  const text = syntheticBar(segments);
  return () => {
    const { figures, problems } = analyse(readSource(text));
    return Number(figures.mass["massKg"]) + problems.length;
  };
}

export const cases: readonly BenchCase[] = [60, 1000, 10_000].map((segments) => ({
  area: "pipeline",
  name: `text to every number, ${segments} segments`,
  run: wholePipeline(segments),
}));
