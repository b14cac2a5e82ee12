import type { Dimension } from "./quantity.ts";

/** A figure that `require` can name. The list belongs to the figure catalogue and is handed to the evaluation. */
export interface RequirableFigure {
  /** The word in the file, such as `tip_speed`. */
  readonly name: string;
  readonly dimension: Dimension;
  /** A limit as a builder would write it, such as `1.6 kg`. */
  readonly example: string;
  /** True where the limit may be written as a balance grade, `G40`. */
  readonly takesGrade: boolean;
  /** True for figures that need a closing speed: `bite at 3 m/s`. */
  readonly takesSpeed: boolean;
}
