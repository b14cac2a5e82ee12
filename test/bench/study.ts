import { readSource } from "../../geometry/analysis/source.ts";
import { biteFigure, STUDIED_FIGURES } from "../../geometry/study/sweep/studied-figure.ts";
import { type Study, studyOf } from "../../geometry/study/sweep/study.ts";
import { sweep } from "../../geometry/study/sweep/sweep.ts";
import { syntheticBar } from "../support/synthetic-bar.ts";
import type { BenchCase } from "./harness.ts";

/** A hundred bars of one sweep. */
const PLACES = 100;

function swept(segments: number, figures: Study["figures"]): () => number {
  // The bite of a requirement would be worked out for it.
  const text = syntheticBar(segments).replace("require clean_bite >= 0 m/s\n", "");
  const study = studyOf(readSource(text), {
    lets: ["tip from 115 mm to 125 mm"],
    counts: [PLACES],
    figures: [],
  });
  if ("message" in study) throw new Error(study.message);
  return () => {
    let sum = 0;
    for (const row of sweep(study.variation, study.axes, figures)) sum += row.figures[0] ?? 0;
    return sum;
  };
}

const WITHOUT_BITE = STUDIED_FIGURES.filter(
  ({ key }) => !["teeth", "cleanBiteMPerS", "teethOnlyMPerS"].includes(key),
);

export const cases: readonly BenchCase[] = [
  {
    area: "study",
    name: `${PLACES} bars of a sweep, all figures but the bite, 60 segments`,
    inputs: "wanted 50 ms: 2,000 bars a second",
    run: swept(60, WITHOUT_BITE),
  },
  {
    area: "study",
    name: `${PLACES} bars of a sweep, all figures and the bite at one speed, 60 segments`,
    inputs: "wanted 200 ms: 500 bars a second",
    run: swept(60, [...STUDIED_FIGURES, biteFigure(6)]),
  },
];
