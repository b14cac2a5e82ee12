/** What a bundle carries in a lighter form does the same as what the tests run. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import * as units from "../../geometry/language/units.ts";
import { UNIT_NAMES } from "../../geometry/language/vocabulary.ts";
import * as region from "../../geometry/outline/check/region.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import { LIGHTER_MODULES } from "../../scripts/lighter-modules.ts";
import { circle, polygon } from "../support/loops.ts";

const ROOT = resolve(import.meta.dirname, "../..");
const ENTRY = `
  export * as region from "./geometry/outline/check/region.ts";
  export * as units from "./geometry/language/units.ts";`;

describe("lighter modules", () => {
  let folder: string;
  let text: string;
  let lighter: { readonly region: typeof region; readonly units: typeof units };

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "barwright-lighter-"));
    const outfile = join(folder, "lighter.mjs");
    const { outputFiles } = await build({
      stdin: { contents: ENTRY, resolveDir: ROOT, loader: "ts" },
      bundle: true,
      minify: true,
      format: "esm",
      outfile,
      write: false,
      plugins: [LIGHTER_MODULES],
    });
    text = outputFiles[0]?.text ?? "";
    await writeFile(outfile, text);
    lighter = await import(pathToFileURL(outfile).href);
  });

  afterAll(() => rm(folder, { recursive: true, force: true }));

  it("give each unit the same worth, to the last bit, and leave the library behind", () => {
    for (const name of UNIT_NAMES) expect(lighter.units.namedUnit(name)).toEqual(units.namedUnit(name));
    // A unit of the library that the language does not have.
    expect(text.includes("fathom")).toBe(false);
  });

  it("find the same areas, small and beyond the clipper's small numbers, and throw for the same loops", () => {
    const coordinate = fc.double({ min: -900, max: 900, noNaN: true });
    const pair = fc.tuple(coordinate, coordinate);
    const shape: fc.Arbitrary<Loop> = fc.oneof(
      fc.array(pair, { minLength: 3, maxLength: 12 }).map((points) => polygon(points)),
      fc
        .tuple(pair, fc.double({ min: 1, max: 400, noNaN: true }))
        .map(([centre, radius]) => circle(radius, centre)),
    );
    fc.assert(
      fc.property(shape, shape, (a, b) => {
        expect(lighter.region.sharedAreaMm2(a, b)).toBe(region.sharedAreaMm2(a, b));
        expect(lighter.region.areaOutsideMm2(a, b)).toBe(region.areaOutsideMm2(a, b));
      }),
      { numRuns: 100 },
    );
    const broken = polygon([
      [0, 0],
      [Number.NaN, 0],
      [0, 1],
    ]);
    expect(() => lighter.region.sharedAreaMm2(broken, broken)).toThrow(RangeError);
  });
});
