/** Where on a bar something strikes, in words and for scripts. */
import type { Analysis } from "../analysis/analyse.ts";
import type { Place } from "../bite/bite.ts";
import { type UnitSystem, unitOf } from "../figures/present.ts";
import type { Point } from "../language/design.ts";

/** `line 17, (112.0, 0.0) to (130.0, 0.0) mm` or `corner (130.0, 0.0) mm`: the line of the file that made it, and its ends. */
export function strikePlace({ outline, source }: Analysis, place: Place, system: UnitSystem): string {
  const segment = outline?.outer.segments[place.index];
  if (!segment) return "";
  const { unit, perUnit } = unitOf("length", system);
  const digits = system === "mm" ? 1 : 2;
  const at = ({ x, y }: Point) => `(${shown(x, perUnit, digits)}, ${shown(y, perUnit, digits)})`;
  if (place.kind === "corner") return `corner ${at(segment.to)} ${unit}`;
  const { line } = source.lines.position(segment.source.start);
  return `line ${line}, ${at(segment.from)} to ${at(segment.to)} ${unit}`;
}

/** As many decimals as tell one segment from the next; no −0. */
function shown(mm: number, perUnit: number, digits: number): string {
  return (mm / perUnit).toFixed(digits).replace(/^-(0(\.0*)?)$/, "$1");
}

/** `segment_3` or `corner_3`, counted along the outer loop from 0; the corner is at the end of the segment. */
export function strikeKey({ kind, index }: Place): string {
  return `${kind}_${index}`;
}
