import type { Drawing } from "./drawing.ts";
import { type Group, point, section } from "./group.ts";

/** What the header says of the unit: millimetres are 4 and metric, inches 1 and not. */
const UNIT_CODES = {
  mm: { insUnits: 4, measurement: 1 },
  in: { insUnits: 1, measurement: 0 },
} as const;

/** The header of either release: its own variables first, then what both say of the drawing. */
export function header({ units, least, greatest }: Drawing, variables: readonly Group[]): Group[] {
  const { insUnits, measurement } = UNIT_CODES[units];
  return section("HEADER", [
    ...variables,
    ...[[9, "$INSUNITS"] as const, [70, insUnits] as const],
    ...[[9, "$MEASUREMENT"] as const, [70, measurement] as const],
    ...[[9, "$EXTMIN"] as const, ...point(10, least, 0)],
    ...[[9, "$EXTMAX"] as const, ...point(10, greatest, 0)],
  ]);
}
