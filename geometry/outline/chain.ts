import type { CornerDesign } from "../language/design.ts";
import type { Segment } from "./segment.ts";

/** What one step drew: a smooth row of segments, never empty, and the treatment of the corner at its end. */
export interface Run {
  readonly segments: readonly Segment[];
  readonly corner: CornerDesign | null;
}

/** The runs of a whole loop, corners not yet treated; the last one ends where the first begins. */
export type Chain = readonly Run[];
