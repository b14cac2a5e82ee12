import { analyse } from "../../../geometry/analysis/analyse.ts";
import { readSource } from "../../../geometry/analysis/source.ts";
import { number } from "../../../geometry/figures/present.ts";
import type { Settings } from "../../../geometry/figures/settings.ts";
import { movableLet } from "../../../geometry/study/movable-let.ts";
import { STUDIED_FIGURES } from "../../../geometry/study/sweep/studied-figure.ts";
import { isString, orNull, shape } from "../../webview/checks.ts";
import { isSettings } from "../messages.ts";
import type { Job } from "./job.ts";

/** One variant of a text. */
export interface MovableInput {
  readonly text: string;
  readonly variant: string | null;
  readonly settings: Partial<Settings>;
}

/** A let that can be varied, with a range to propose, as they would be written. */
export interface MovableChoice {
  readonly name: string;
  readonly now: string;
  readonly from: string;
  readonly to: string;
}

/** What there is to vary and to follow. */
export interface MovableResult {
  readonly lets: readonly MovableChoice[];
  readonly figures: readonly { readonly key: string; readonly label: string }[];
}

export const isMovableInput = shape<MovableInput>({
  text: isString,
  variant: orNull(isString),
  settings: isSettings,
});

const DIGITS = 6;

export const movableJob: Job<"movable", MovableInput, MovableResult> = {
  kind: "movable",
  isInput: isMovableInput,
  run: ({ text, variant, settings }) => {
    const source = readSource(text);
    const { design } = analyse(source, { variant, settings });
    const lets = design.lets.flatMap(({ name }) => {
      const found = movableLet(source.tree, design, name);
      if ("reason" in found) return [];
      const written = (value: number) =>
        `${number(value, DIGITS)}${found.unit === null ? "" : ` ${found.unit}`}`;
      return [{ name, now: found.text, from: written(found.least), to: written(found.most) }];
    });
    return { result: { lets, figures: STUDIED_FIGURES.map(({ key, label }) => ({ key, label })) } };
  },
};
