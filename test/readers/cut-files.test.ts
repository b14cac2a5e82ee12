/** Cut files as programs of other people read them: ezdxf, which also audits, and dxf-parser. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { DrawingUnit } from "../../geometry/files/drawing-unit.ts";
import { type DxfRelease, toDxf } from "../../geometry/files/dxf.ts";
import { type CutCase, HAND_MADE, RANDOM } from "../files/cut-outlines.ts";
import { figuresOf } from "./curve-figures.ts";
import { type FoundDrawing, readWithDxfParser, readWithEzdxf } from "./dxf-readers.ts";

const RELEASES: readonly DxfRelease[] = ["2000", "r12"];
const UNITS: readonly DrawingUnit[] = ["mm", "in"];
const MM = { mm: 1, in: 25.4 } as const;
const RELATIVE = 1e-9;

interface Variation {
  readonly file: string;
  readonly cut: CutCase;
  readonly release: DxfRelease;
  readonly units: DrawingUnit;
  readonly text: string;
}

const NAME = "Wattlebird Größe 2";
const VARIATIONS: readonly Variation[] = [...HAND_MADE, ...RANDOM].flatMap((cut, i) =>
  RELEASES.flatMap((release) =>
    UNITS.map((units): Variation => {
      const text = toDxf(cut.outline, { release, units, name: NAME });
      return { file: `${i}-${release}-${units}.dxf`, cut, release, units, text };
    }),
  ),
);

let folder = "";
let byEzdxf = new Map<string, FoundDrawing>();

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "cut-files-"));
  for (const { file, text } of VARIATIONS) writeFileSync(join(folder, file), text);
  byEzdxf = readWithEzdxf(folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Found = Omit<FoundDrawing, "errors" | "fixes" | "paperspace">;

function expectDrawing(found: Found, { cut, release, units }: Variation): void {
  expect(found.version).toBe(release === "2000" ? "AC1015" : "AC1009");
  expect([found.insUnits, found.measurement]).toEqual(units === "mm" ? [4, 1] : [1, 0]);
  expect(found.layers.filter((name) => name !== "Defpoints")).toEqual([
    "0",
    "CUT_INNER",
    "CUT_OUTER",
    "MARK",
  ]);
  expect(found.texts).toEqual([{ layer: "MARK", text: "Wattlebird Grosse 2" }]);
  expect(found.lines.map(([, , , , layer]) => layer)).toEqual(["MARK", "MARK"]);
  const curveKinds = release === "2000" ? ["CIRCLE", "LWPOLYLINE"] : ["CIRCLE", "POLYLINE"];
  expect(found.kinds.filter((kind) => ![...curveKinds, "LINE", "TEXT"].includes(kind))).toEqual([]);
  expect(found.curves.filter(({ layer }) => layer === "CUT_OUTER")).toHaveLength(1);
  expect(found.curves.filter(({ layer }) => layer === "CUT_INNER")).toHaveLength(cut.outline.inner.length);
  for (const curve of found.curves) if (curve.kind === "polyline") expect(curve.closed).toBe(true);
}

/** Area, centroid and extents from the reader's own vertices against the model's, in mm. */
function expectShape(found: Found, { cut, units }: Variation): void {
  const scale = MM[units];
  const ofLayer = (name: string) => found.curves.filter(({ layer }) => layer === name);
  const figures = figuresOf(ofLayer("CUT_OUTER"), ofLayer("CUT_INNER"));
  const [x0, y0, x1, y1] = cut.expected.boundsMm;
  const size = Math.hypot(x1 - x0, y1 - y0);
  const near = (actual: number, expected: number, slack: number) =>
    expect(Math.abs(actual - expected), `${actual} for ${expected}`).toBeLessThanOrEqual(slack);
  near(figures.area * scale ** 2, cut.expected.areaMm2, RELATIVE * cut.expected.areaMm2);
  near(figures.centroid[0] * scale, cut.expected.centroidMm[0], RELATIVE * size);
  near(figures.centroid[1] * scale, cut.expected.centroidMm[1], RELATIVE * size);
  for (const [i, expected] of cut.expected.boundsMm.entries())
    near((figures.bounds[i] ?? Number.NaN) * scale, expected, RELATIVE * size);
  // The header's box takes in the cross too, should the axis lie outside.
  const crossX = found.lines.flatMap(([a, , b]) => [a, b]);
  const crossY = found.lines.flatMap(([, a, , b]) => [a, b]);
  near(
    (found.least[0] ?? Number.NaN) * scale,
    Math.min(x0, ...crossX.map((x) => x * scale)),
    RELATIVE * size,
  );
  near(
    (found.least[1] ?? Number.NaN) * scale,
    Math.min(y0, ...crossY.map((y) => y * scale)),
    RELATIVE * size,
  );
  near(
    (found.greatest[0] ?? Number.NaN) * scale,
    Math.max(x1, ...crossX.map((x) => x * scale)),
    RELATIVE * size,
  );
  near(
    (found.greatest[1] ?? Number.NaN) * scale,
    Math.max(y1, ...crossY.map((y) => y * scale)),
    RELATIVE * size,
  );
}

/** No piece without length, no arc over half a circle. */
function expectCleanCurves(found: Found): void {
  for (const curve of found.curves) {
    if (curve.kind === "circle") continue;
    const { vertices } = curve;
    const chords = vertices.map((from, i) => {
      const to = vertices[(i + 1) % vertices.length] ?? from;
      return Math.hypot(to.x - from.x, to.y - from.y);
    });
    expect(Math.min(...chords)).toBeGreaterThan(1e-10);
    expect(Math.max(...vertices.map(({ bulge }) => Math.abs(bulge)))).toBeLessThanOrEqual(1);
  }
}

function expectOnAxis(found: Found): void {
  const [across, up] = found.lines;
  expect([across?.[1], across?.[3], up?.[0], up?.[2]]).toEqual([0, 0, 0, 0]);
  expect(across?.[0]).toBe(-(across?.[2] ?? 0));
  expect(up?.[1]).toBe(-(up?.[3] ?? 0));
  expect(across?.[2]).toBeGreaterThan(0);
}

describe.each(VARIATIONS)("$cut.name, release $release in $units", (variation) => {
  it("passes ezdxf's audit without an error or a fix, and is in model space alone", () => {
    const found = byEzdxf.get(variation.file);
    expect(found?.errors).toEqual([]);
    expect(found?.fixes).toEqual([]);
    expect(found?.paperspace).toBe(0);
  });

  it("is the same drawing to both readers as to us", () => {
    for (const found of [byEzdxf.get(variation.file), readWithDxfParser(variation.text)]) {
      if (!found) throw new Error(`${variation.file} was not read`);
      expectDrawing(found, variation);
      expectShape(found, variation);
      expectCleanCurves(found);
      expectOnAxis(found);
    }
  });
});

describe("round loops", () => {
  const read = (name: string) => {
    const variation = VARIATIONS.find(
      ({ cut, release, units }) => cut.name === name && release === "2000" && units === "mm",
    );
    return readWithDxfParser(variation?.text ?? "").curves;
  };

  it("are circles, the outer one and those drawn in several arcs too", () => {
    expect(read("an annulus")).toEqual([
      { kind: "circle", layer: "CUT_OUTER", x: 0, y: 0, radius: 50 },
      { kind: "circle", layer: "CUT_INNER", x: 0, y: 0, radius: 20 },
    ]);
    expect(read("a disc drawn as three arcs").map(({ kind }) => kind)).toEqual(["circle", "circle"]);
  });

  it("of half circles and more have bulges of ±1 at most, split in two", () => {
    const [outer] = read("a bar with ends of more than half a circle");
    expect(outer?.kind === "polyline" && outer.vertices.map(({ bulge }) => bulge > 0)).toEqual([
      true,
      true,
      false,
      true,
      true,
      false,
    ]);
    const [, slot] = read("a plate with a slot");
    expect(slot?.kind === "polyline" && slot.vertices.map(({ bulge }) => bulge + 0).sort()).toEqual([
      -1, -1, 0, 0,
    ]);
  });

  it("leave out the leftovers of rounding", () => {
    const [outer] = read("a plate with leftovers of rounding");
    expect(outer?.kind === "polyline" && outer.vertices).toHaveLength(4);
  });
});
