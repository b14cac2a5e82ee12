import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sectionOf } from "../../geometry/figures/section.ts";
import type { DrawingUnit } from "../../geometry/files/drawing-unit.ts";
import { type DxfRelease, toDxf } from "../../geometry/files/dxf.ts";
import { verifyCut } from "../../geometry/files/verify-cut.ts";
import { annulus, circle, outlineOf, rectangle } from "../support/loops.ts";
import { bore, HAND_MADE, RANDOM, randomCase } from "./cut-outlines.ts";
import { faultsOf2000, faultsOfR12, groupsIn, structureOf } from "./dxf-structure.ts";

const SEED = 20_260_103;
const CASES = [...HAND_MADE, ...RANDOM];
const VARIATIONS = (["2000", "r12"] as const).flatMap((release) =>
  (["mm", "in"] as const).map((units) => ({ release, units })),
);
const plate = outlineOf(rectangle(-100, -20, 60, 20), circle(10));

const dxf = (release: DxfRelease, units: DrawingUnit = "mm", name = "Wattlebird") =>
  toDxf(plate, { release, units, name });

describe.each(VARIATIONS)("a cut file of release $release in $units", ({ release, units }) => {
  it.each(CASES)("of $name keeps every rule of the format and passes its own check", ({ outline, name }) => {
    const text = toDxf(outline, { release, units, name });
    expect(release === "2000" ? faultsOf2000(text) : faultsOfR12(text)).toEqual([]);
    expect(verifyCut(outline, text, units)).toEqual([]);
  });

  it("is ASCII with LF, ends with EOF, and its numbers are plain decimals", () => {
    for (const { outline, name } of CASES) {
      const text = toDxf(outline, { release, units, name });
      expect(text).toMatch(/^[\n -~]*\n {2}0\nEOF\n$/);
      const reals = groupsIn(text).filter(({ code }) => code >= 10 && code < 60);
      expect(
        reals.filter(({ value }) => !/^-?(0|[1-9]\d*)(\.\d*[1-9])?$/.test(value) || value === "-0"),
      ).toEqual([]);
    }
  });

  it("has the same bytes each time, and no date, user or path", () => {
    const text = dxf(release, units);
    expect(dxf(release, units)).toBe(text);
    const variables = [...structureOf(text).variables.keys()];
    const common = ["$ACADVER", "$EXTMAX", "$EXTMIN", "$INSUNITS", "$MEASUREMENT"];
    const more = release === "2000" ? ["$DWGCODEPAGE", "$HANDSEED", "$PSTYLEMODE"] : [];
    expect(variables.sort()).toEqual([...common, ...more].sort());
  });

  it("states the unit and divides by 25.4 for inches", () => {
    const { variables } = structureOf(dxf(release, units));
    expect(variables.get("$INSUNITS")).toEqual([units === "mm" ? "4" : "1"]);
    expect(variables.get("$MEASUREMENT")).toEqual([units === "mm" ? "1" : "0"]);
    expect(variables.get("$EXTMIN")).toEqual(
      units === "mm" ? ["-100", "-20", "0"] : ["-3.937007874016", "-0.787401574803", "0"],
    );
    expect(variables.get("$EXTMAX")).toEqual(
      units === "mm" ? ["60", "20", "0"] : ["2.362204724409", "0.787401574803", "0"],
    );
  });
});

describe("the rules of the format, as tested here", () => {
  it.each<[string, (text: string) => string, RegExp]>([
    ["a handle that stands twice", (text) => text.replace("  5\n101\n", "  5\n100\n"), /stands twice/],
    ["a seed that is used", (text) => text.replace(/(HANDSEED\n {2}5\n)\w+/, "$1101"), /not below the seed/],
    ["an owner that is nowhere", (text) => text.replace(/330\n24/, "330\nAB"), /330 to AB/],
    ["a marker lost", (text) => text.replace("100\nAcDbPolyline\n", ""), /LWPOLYLINE has the markers/],
    ["a table lost", (text) => text.replace("  2\nUCS\n", "  2\nVIEW\n"), /tables/],
    ["a section lost", (text) => text.replace("  2\nCLASSES\n", "  2\nBLOCKS\n"), /sections/],
    ["a bulge lost", (text) => text.replace(/ 42\n0\n/, ""), /out of order/],
    ["no end", (text) => text.replace("  0\nEOF\n", ""), /no EOF/],
  ])("find %s", (_, edit, fault) => {
    const text = dxf("2000");
    expect(edit(text)).not.toBe(text);
    expect(faultsOf2000(edit(text)).join("\n")).toMatch(fault);
  });

  it("find records of the later release in one of release 12", () => {
    const text = dxf("r12").replace("POLYLINE\n", "POLYLINE\n100\nAcDbEntity\n");
    expect(faultsOfR12(text)).toEqual(["POLYLINE has a subclass marker"]);
    expect(faultsOfR12(dxf("2000"))).not.toEqual([]);
  });
});

describe("random outlines", () => {
  it("pass the check of a cut file in every release and unit", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 ** 31 }),
        fc.constantFrom(...VARIATIONS),
        (seed, { release, units }) => {
          const { outline } = randomCase(seed);
          const text = toDxf(outline, { release, units, name: "bar" });
          expect(verifyCut(outline, text, units)).toEqual([]);
        },
      ),
      { seed: SEED, numRuns: 150 },
    );
  });
});

describe("release 12", () => {
  it("says its unit in a comment too", () => {
    expect(dxf("r12").split("\n").slice(0, 2)).toEqual(["999", "Units: millimetres, scale 1:1"]);
    expect(dxf("r12", "in").split("\n").slice(0, 2)).toEqual(["999", "Units: inches, scale 1:1"]);
  });
});

describe("the name", () => {
  const textOf = (name: string, release: DxfRelease = "2000") =>
    (structureOf(dxf(release, "mm", name)).entries.get("ENTITIES") ?? [])
      .filter(({ kind }) => kind === "TEXT")
      .flatMap(({ groups }) => groups.filter(({ code }) => code === 1).map(({ value }) => value));

  it.each([
    ["Wattlebird one-tooth", "Wattlebird one-tooth"],
    ["Größe 2", "Grosse 2"],
    ["旋風", "unnamed bar"],
    ["", "unnamed bar"],
    ["50 %%d \\U+00B0 ^J", "50 %d /U+00B0 'J"],
    ["a\n  0\nEOF", "a 0 EOF"],
    ["x".repeat(500), "x".repeat(60)],
  ])("%j is written as %j", (name, text) => {
    expect(textOf(name)).toEqual([text]);
    expect(textOf(name, "r12")).toEqual([text]);
  });

  it("is never empty, never breaks the file, and holds no control code", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "binary" }),
        fc.constantFrom<DxfRelease>("2000", "r12"),
        (name, release) => {
          const [text, ...more] = textOf(name, release);
          expect(more).toEqual([]);
          expect(text).toMatch(/^[!-~]([ -~]*[!-~])?$/);
          expect(text).not.toMatch(/%%|\\|\^/);
          expect(verifyCut(plate, dxf(release, "mm", name), "mm")).toEqual([]);
        },
      ),
      { seed: SEED, numRuns: 100 },
    );
  });

  it.each([
    ["beside the bore", outlineOf(rectangle(-100, -20, 60, 20))],
    ["beside a large bore", { ...outlineOf(rectangle(-100, -40, 100, 40)), inner: [bore(30)] }],
    ["in the corner of a plate away from the axis", outlineOf(rectangle(200, 200, 220, 300))],
    ["in the corner of a plate above the axis", outlineOf(rectangle(-100, 10, 100, 60))],
    ["in the corner of a plate below the axis", outlineOf(rectangle(-100, -60, 100, 0))],
    ["on a small disc", annulus(3, 1)],
  ])("stays within the part: %s", (_, outline) => {
    for (const name of ["W", "Wattlebird one-tooth with the long tail"]) {
      const { entries } = structureOf(toDxf(outline, { release: "2000", units: "mm", name }));
      const text = entries.get("ENTITIES")?.find(({ kind }) => kind === "TEXT");
      const number = (code: number) => Number(text?.groups.find((group) => group.code === code)?.value);
      const [x0, y0, x1, y1] = sectionOf(outline).boundsMm;
      expect(number(40)).toBeGreaterThan(0);
      expect(number(10)).toBeGreaterThanOrEqual(x0);
      expect(number(20)).toBeGreaterThanOrEqual(y0);
      expect(number(10) + number(40) * name.length).toBeLessThanOrEqual(x1 + 1e-9);
      expect(number(20) + number(40)).toBeLessThanOrEqual(y1);
    }
  });
});

it("refuses coordinates that are not finite, as a bug", () => {
  const outline = outlineOf(rectangle(0, 0, Number.NaN, 10));
  expect(() => toDxf(outline, { release: "2000", units: "mm", name: "bar" })).toThrow(RangeError);
});
