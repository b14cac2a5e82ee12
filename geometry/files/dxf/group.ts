import { COORDINATE_DIGITS } from "../drawing-unit.ts";
import { plainDecimal } from "../plain-decimal.ts";

/** One group of the exchange format: what the value means, and the value as it stands in the file. */
export type Group = readonly [code: number, value: string | number];

/** Groups as text: the code right-aligned in three columns as the format's reference prints it, LF at each end. */
export function renderGroups(groups: readonly Group[]): string {
  return groups.map(([code, value]) => `${String(code).padStart(3)}\n${value}\n`).join("");
}

/** A length or coordinate. */
export function real(code: number, value: number): Group {
  return [code, plainDecimal(value, COORDINATE_DIGITS)];
}

/** A point in the plane of the drawing: x at the code, y ten above it, and z where the record has one. */
export function point(code: number, { x, y }: { x: number; y: number }, z?: 0): Group[] {
  return [real(code, x), real(code + 10, y), ...(z === undefined ? [] : [real(code + 20, z)])];
}

/** A section and what is in it. */
export function section(name: string, groups: readonly Group[]): Group[] {
  return [[0, "SECTION"], [2, name], ...groups, [0, "ENDSEC"]];
}

/** Handles are hexadecimal numbers without sign or prefix. */
export function handleText(handle: number): string {
  return handle.toString(16).toUpperCase();
}
