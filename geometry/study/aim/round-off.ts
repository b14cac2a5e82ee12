/** The values of a place as a shop measures them, on the side on which all limits hold. */
import { fixed } from "../../figures/present.ts";
import type { MovableLet } from "../movable-let.ts";
import { combinations, neighbours, shopDecimals } from "../round-values.ts";
import type { AimTask } from "./aim-task.ts";
import {
  compareRatings,
  isFeasible,
  type Measured,
  type MeasuredSteps,
  type Place,
  type Rating,
} from "./rating.ts";

/** So many decimals more than a shop measures, where a tight limit such as a balance grade needs them. */
const MOST_EXTRA_DECIMALS = 4;

export interface Rounded {
  readonly at: Place;
  /** The number of each let as it is to be written. */
  readonly digits: readonly string[];
  readonly measured: Measured;
}

/**
 * The best combination of the numbers next to the exact values, with as few decimals as leave one that is feasible;
 * where none is, the one that misses the limits least. Null where none can be measured.
 */
export function* roundOff(
  { lets, valuesAt, placeOf }: AimTask,
  { at, measured: before }: { readonly at: Place; readonly measured: Measured },
  rate: (measured: Measured) => Rating,
): MeasuredSteps<Rounded | null> {
  const exact = valuesAt(at);
  let best: (Rounded & { readonly rating: Rating }) | null = null;
  for (let extra = 0; extra <= MOST_EXTRA_DECIMALS; extra += 1) {
    const decimals = lets.map((of) => shopDecimals(of) + extra);
    const choices = lets.map((of, i) => nextTo(of, exact[i] ?? of.value, decimals[i] ?? 0));
    for (const values of combinations(choices)) {
      const place = placeOf(values);
      const measured = yield place;
      if (measured === null) continue;
      const rating = rate(measured);
      if (best !== null && compareRatings(rating, best.rating) >= 0) continue;
      const digits = values.map((value, i) => fixed(value, decimals[i] ?? 0));
      best = { at: place, digits, measured, rating };
    }
    // More decimals mend what rounding spoils, and nothing else.
    if (best !== null && (isFeasible(best.rating) || !isFeasible(before))) break;
  }
  return best;
}

/** A value that is as it is written already stays so, however many digits that has. */
function nextTo(of: MovableLet, value: number, decimals: number): readonly number[] {
  const isPresent = Math.abs(value - of.value) <= 1e-12 * Math.max(1, Math.abs(of.value));
  return isPresent ? [of.value] : neighbours(of, value, decimals);
}
