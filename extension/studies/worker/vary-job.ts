import { readSource } from "../../../geometry/analysis/source.ts";
import type { Measure } from "../../../geometry/figures/figure.ts";
import { sweepCsv } from "../../../geometry/files/sweep-files.ts";
import { studyOf } from "../../../geometry/study/sweep/study.ts";
import { placesOf, type SweepRow, sweep, valuesOf } from "../../../geometry/study/sweep/sweep.ts";
import { arrayOf, isNumber, isString, orNull, shape } from "../../webview/checks.ts";
import { isSettings } from "../messages.ts";
import type { Job } from "./job.ts";
import type { MovableInput } from "./movable-job.ts";

/** What is to be varied: one let or two, and the figures to follow, all as a person would ask for them. */
export interface VaryInput extends MovableInput {
  readonly lets: readonly string[];
  readonly counts: readonly number[];
  readonly figures: readonly string[];
}

export interface VaryResult {
  readonly lets: readonly {
    readonly name: string;
    readonly unit: string | null;
    readonly now: number;
    readonly values: readonly number[];
  }[];
  readonly figures: readonly { readonly key: string; readonly label: string; readonly measure: Measure }[];
  /** A row for each place, the last let fastest. */
  readonly rows: readonly SweepRow[];
  /** The same as comma-separated values. */
  readonly csv: string;
}

/** So many bars take seconds, and a table of more is not read. */
const MOST_BARS = 20_000;

export const varyJob: Job<"vary", VaryInput, VaryResult> = {
  kind: "vary",
  isInput: shape<VaryInput>({
    text: isString,
    variant: orNull(isString),
    settings: isSettings,
    lets: arrayOf(isString),
    counts: arrayOf(isNumber),
    figures: arrayOf(isString),
  }),
  run: (input, tell) => {
    const study = studyOf(readSource(input.text), input);
    if ("message" in study) return { refused: study.message };
    const { variation, axes, figures } = study;
    const total = placesOf(axes);
    if (total > MOST_BARS)
      return { refused: `That makes ${total} bars; ${MOST_BARS} are worked out at most.` };
    const rows: SweepRow[] = [];
    for (const row of sweep(variation, axes, figures)) {
      rows.push(row);
      tell({ done: rows.length, total });
    }
    return {
      result: {
        lets: variation.lets.map(({ name, unit, value }, i) => ({
          name,
          unit,
          now: value,
          values: axes[i] ? valuesOf(axes[i]) : [],
        })),
        figures: figures.map(({ key, label, measure }) => ({ key, label, measure })),
        rows,
        csv: sweepCsv(study, rows),
      },
    };
  },
};
