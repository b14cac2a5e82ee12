import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { analysisJson } from "../../geometry/files/json.ts";
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

/** The same to the JSON of the command line: quantiles, strikes, wanted depths and the rest of it too. */
function wholeJson(segments: number): () => number {
  const text = syntheticBar(segments);
  return () => JSON.stringify(analysisJson(analyse(readSource(text)))).length;
}

const AREA = "pipeline";

export const cases: readonly BenchCase[] = [
  ...[60, 1000, 10_000].map((segments) => ({
    area: AREA,
    name: `text to every number, ${segments} segments`,
    run: wholePipeline(segments),
  })),
  { area: AREA, name: "text to the JSON with all distributions, 60 segments", run: wholeJson(60) },
];
