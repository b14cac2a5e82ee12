import type { DrawingUnit } from "./drawing-unit.ts";
import type { DxfRelease } from "./dxf.ts";
import { printableAscii } from "./printable-ascii.ts";

/** Names that one family of operating systems keeps for devices, whatever ending follows them. */
const DEVICE_NAME = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/** Leaves room for a unit, an ending and a folder within every common limit. */
const LONGEST_NAME = 64;

/**
 * A name for a file, without ending, that every file system and web form takes: lower-case letters, digits and
 * single hyphens. Never empty.
 * @example cleanFileName("Wattlebird one-tooth") // "wattlebird-one-tooth"
 */
export function cleanFileName(name: string): string {
  const words = printableAscii(name, "bar")
    .toLowerCase()
    .replace(/'/g, "")
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, LONGEST_NAME)
    .replace(/^-+|-+$/g, "");
  return DEVICE_NAME.test(words) ? `bar-${words}` : words;
}

/**
 * The file name to suggest for a cut file. It tells the unit where the file's reader might not: release 12 has no
 * way to state it that its readers must know, and inches are what a shop may not expect.
 * @example cutFileName("Wattlebird one-tooth", { release: "r12", units: "mm" }) // "wattlebird-one-tooth-mm.dxf"
 */
export function cutFileName(name: string, options: { release: DxfRelease; units: DrawingUnit }): string {
  const tellUnit = options.release === "r12" || options.units === "in";
  return `${cleanFileName(name)}${tellUnit ? `-${options.units}` : ""}.dxf`;
}
