/** A bar as a function of some of its lets: what sweeps and searches work out over and over, the text left alone. */
import { type Analysis, analyse } from "../analysis/analyse.ts";
import type { Source } from "../analysis/source.ts";
import type { Settings } from "../figures/settings.ts";
import { type MovableLet, movableLet, type NotMovable, withValues } from "./movable-let.ts";

export interface VariationRequest {
  /** The lets to be varied. */
  readonly names: readonly string[];
  /** The variant to be varied; `null` for the bar as it stands. */
  readonly variant?: string | null;
  readonly settings?: Partial<Settings>;
}

export interface Variation {
  /** As they stand in the text, in the order of the names. */
  readonly lets: readonly MovableLet[];
  /** The bar as it is in the text. */
  readonly start: Analysis;
  /**
   * The bar with these values, one for each let in its own unit: what the text with them written into it would give.
   * Shape and mass are worked out at once; bite, curve and problems only when they are looked at.
   */
  at(values: readonly number[]): Analysis;
}

/** Makes one variant of a source a function of its lets, or says which of them cannot be moved and why. */
export function variationOf(
  source: Source,
  { names, variant = null, settings = {} }: VariationRequest,
): Variation | NotMovable {
  const start = analyse(source, { variant, settings });
  const lets: MovableLet[] = [];
  for (const name of names) {
    const found = movableLet(source.tree, start.design, name);
    if ("reason" in found) return found;
    lets.push(found);
  }
  return {
    lets,
    start,
    at: (values) =>
      analyse({ ...source, tree: withValues(source.tree, lets, values) }, { variant, settings }),
  };
}
