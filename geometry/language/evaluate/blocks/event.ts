import type { EventDesign } from "../../design.ts";
import { type BlockValues, numberOf } from "./block-values.ts";

/** What `event { … }` says; limits with a problem are left out. */
export function eventOf(values: BlockValues): EventDesign {
  return {
    limits: values.limits.map((limit) => ({ ...limit, isOfEvent: true })),
    measuredSpinDownS: numberOf(values, "measured_spin_down", "time")?.value ?? null,
    range: values.range,
  };
}
