/** A let with the range that it is to be swept over, as a person asks for it: `tail from 80 mm to 120 mm`, or `tail`. */
import { sameDimension } from "../../language/dimension.ts";
import { numberOfUnit } from "../../language/units.ts";
import type { MovableLet } from "../movable-let.ts";
import { readLine } from "./read-line.ts";

/** From where to where a let goes, in its own unit. */
export interface SweptRange {
  readonly from: number;
  readonly to: number;
}

/** What was asked for, read but not looked up. */
export interface SweptWords {
  readonly name: string;
  /** The values as they were written; null for the bounds of the let. */
  readonly range: { readonly from: string; readonly to: string } | null;
}

/** Reads `NAME` or `NAME from VALUE to VALUE`; null where it is neither. */
export function sweptWords(words: string): SweptWords | null {
  const found = /^\s*([A-Za-z_]\w*)\s*(?:\sfrom\s+(\S.*?)\s+to\s+(\S.*?)\s*)?$/.exec(words);
  if (!found) return null;
  const [, name = "", from, to] = found;
  return { name, range: from === undefined || to === undefined ? null : { from, to } };
}

/** The range in the let's own unit; where none was asked for its bounds, or half to twice its value. */
export function sweptRange(of: MovableLet, { range }: SweptWords): SweptRange | { readonly message: string } {
  if (range === null) return { from: of.least, to: of.most };
  // Read as the language reads bounds, so that units and sums are as they are in a file.
  const { design, mistake } = readLine(`let ${of.name} = ${range.from} from ${range.from} to ${range.to}`);
  const bounds = design?.lets[0]?.bounds;
  if (!bounds) return { message: mistake ?? `'${range.from}' to '${range.to}' is no range.` };
  if (!sameDimension(bounds.from.dimension, of.scale.dimension))
    return { message: `'${of.name}' is ${of.text}: ${range.from} to ${range.to} is of another kind.` };
  return { from: numberOfUnit(bounds.from, of.scale), to: numberOfUnit(bounds.to, of.scale) };
}
