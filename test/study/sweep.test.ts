import { describe, expect, test } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { sweepCsv, sweepJson } from "../../geometry/files/sweep-files.ts";
import { STUDIED_FIGURES, studiedFigure } from "../../geometry/study/sweep/studied-figure.ts";
import { type Study, type StudyRequest, studyOf } from "../../geometry/study/sweep/study.ts";
import { MOST_PLACES, type SweepRow, sweep } from "../../geometry/study/sweep/sweep.ts";

/** A bar whose figures are known by hand: a rectangle less a disc. */
const PLATE = `bar "Plank"
thickness 8 mm
density 7850 kg/m^3
let half = 100 mm from 40 mm to 160 mm
let width = 30 mm
outline {
  from (half, -width / 2) line (half, width / 2) line (-half, width / 2) line (-half, -width / 2) close
}
bore 20 mm
spin 3000 rpm ccw
require mass <= 0.5 kg
`;

function study(text: string, request: Partial<StudyRequest>): Study {
  const found = studyOf(readSource(text), { lets: ["half"], counts: [], figures: [], ...request });
  if ("message" in found) throw new Error(found.message);
  return found;
}

function rowsOf({ variation, axes, figures }: Study): SweepRow[] {
  return [...sweep(variation, axes, figures)];
}

function refusal(request: Partial<StudyRequest>): string {
  const found = studyOf(readSource(PLATE), { lets: ["half"], counts: [], figures: [], ...request });
  return "message" in found ? found.message : "";
}

describe("a sweep", () => {
  test("follows mass and inertia of a rectangle with a bore as algebra has them", () => {
    const rows = rowsOf(study(PLATE, { counts: [25], figures: ["mass", "inertia", "tip_speed"] }));
    expect(rows).toHaveLength(25);
    for (const { values, isSound, figures } of rows) {
      const [half = Number.NaN] = values;
      const [length, width, bore] = [2 * half, 30, 10];
      const perMm2 = 8 * 7850e-9;
      // Polar second moments of a rectangle and of a disc about their middle: bh(b² + h²)/12 and πr⁴/2. Handbook forms,
      // such as Roark's Formulas for Stress and Strain, properties of sections.
      const area = length * width - Math.PI * bore ** 2;
      const polar = (length * width * (length ** 2 + width ** 2)) / 12 - (Math.PI * bore ** 4) / 2;
      expect(isSound).toBe(true);
      expect(figures[0]).toBeCloseTo(area * perMm2, 12);
      expect(figures[1]).toBeCloseTo(polar * perMm2 * 1e-6, 12);
      expect(figures[2]).toBeCloseTo((Math.hypot(half, 15) / 1000) * ((3000 * 2 * Math.PI) / 60), 9);
    }
  });

  test("has its ends exactly as asked for, even steps between, and the last let fastest", () => {
    const words = ["half from 5 cm to 0.15 m", "width from 25 mm to 1.5 in"];
    const rows = rowsOf(study(PLATE, { lets: words, counts: [3, 2], figures: ["areaMm2"] }));
    expect(rows.map(({ values }) => values.map((value) => Number(value.toFixed(9))))).toEqual(
      [50, 100, 150].flatMap((half) => [25, 38.1].map((width) => [half, width])),
    );
    expect(rows[5]?.figures[0]).toBeCloseTo(300 * 38.1 - 100 * Math.PI, 6);
  });

  test("takes a let's bounds, and half to twice its value where it has none", () => {
    expect(study(PLATE, {}).axes).toEqual([{ from: 40, to: 160, count: 41 }]);
    expect(study(PLATE, { lets: ["width", "half"] }).axes).toEqual([
      { from: 15, to: 60, count: 21 },
      { from: 40, to: 160, count: 21 },
    ]);
  });

  test("tells where the requirements are kept: up to the length that algebra gives", () => {
    const most = (0.5 / (8 * 7850e-9) + 100 * Math.PI) / 60;
    const rows = rowsOf(study(PLATE, { counts: [400], figures: ["mass"] }));
    for (const { values, keepsRequirements } of rows)
      expect(keepsRequirements).toBe((values[0] ?? 0) <= most);
    expect(rows.filter(({ keepsRequirements }) => keepsRequirements).length).toBeGreaterThan(100);
    const free = rowsOf(study(PLATE.replace("require mass <= 0.5 kg\n", ""), { counts: [2] }));
    expect(free.map(({ keepsRequirements }) => keepsRequirements)).toEqual([null, null]);
  });

  test("knows nothing of what is no plate: a bore wider than the bar", () => {
    const rows = rowsOf(study(PLATE, { lets: ["width from 10 mm to 40 mm"], counts: [4] }));
    expect(rows.map(({ isSound }) => isSound)).toEqual([false, false, true, true]);
    expect(rows[0]?.figures.every((figure) => figure === null)).toBe(true);
    expect(rows[3]?.figures[0]).toBeGreaterThan(0);
  });

  test("is not taken in by a value that leaves a hole out", () => {
    const text = `${PLATE}let rise = 30 mm from 0 mm to 60 mm\nhole (sqrt((50 mm)^2 - rise^2) + 20 mm, 0 mm) diameter 9 mm\n`;
    const rows = rowsOf(study(text, { lets: ["rise"], counts: [7], figures: ["holes", "mass"] }));
    expect(rows.map(({ figures }) => figures[0])).toEqual([2, 2, 2, 2, 2, 2, null]);
  });

  test("gives the same bite as the bar with the value written into it", () => {
    const rows = rowsOf(study(PLATE, { counts: [4], figures: ["bite at 3 m/s", "teeth_only"] }));
    for (const { values, figures } of rows) {
      const { assessment } = analyse(readSource(PLATE.replace("half = 100 mm", `half = ${values[0]} mm`)));
      expect(figures).toEqual([
        assessment.bite?.at(3).maxMm,
        assessment.bite?.teethOnly.closingMPerS ?? null,
      ]);
    }
  });

  test("refuses counts that are a bug", () => {
    const { variation, figures } = study(PLATE, {});
    for (const count of [1, 2.5, MOST_PLACES + 1])
      expect(() => [...sweep(variation, [{ from: 1, to: 2, count }], figures)]).toThrow(RangeError);
  });
});

describe("a request", () => {
  test.each<[string, Partial<StudyRequest>, string]>([
    ["no let", { lets: [] }, "Name one let"],
    ["three", { lets: ["half", "width", "half"] }, "Name one let"],
    ["one twice", { lets: ["half", "half from 1 mm to 2 mm"] }, "swept already"],
    ["no let of the name", { lets: ["hulf"] }, "did you mean half"],
    ["half a range", { lets: ["half from 80 mm"] }, "write tail, or tail from 80 mm to 120 mm"],
    ["no unit", { lets: ["half from 80 to 90 mm"] }, "'80' has no unit"],
    ["another kind", { lets: ["half from 80 deg to 90 deg"] }, "of another kind"],
    ["backwards", { lets: ["half from 90 mm to 80 mm"] }, "low to high"],
    ["one value", { counts: [1] }, "2 values"],
    ["no number", { counts: [Number.NaN] }, "2 values"],
    ["too many counts", { counts: [3, 3] }, "for each let"],
    ["too much", { lets: ["half", "width"], counts: [1000] }, "1000000 bars"],
    ["a bite at no speed", { figures: ["bite"] }, "bite at 3 m/s"],
    ["a mass at a speed", { figures: ["mass at 3 m/s"] }, "does not depend"],
    ["a comment in a range", { lets: ["half from 80 mm to 90 mm # or 95 mm"] }, "without a comment"],
    ["a limit in a figure", { figures: ["mass <= 3 kg"] }, "does not belong here"],
    ["a limit and a comment", { figures: ["mass <= 3 kg #"] }, "without a comment"],
    ["no figure", { figures: ["mess"] }, "did you mean mass"],
    ["what is no number", { figures: ["centroidMm"] }, "There is no figure"],
  ])("with %s is told what is wrong", (_, request, message) => {
    expect(refusal(request)).toContain(message);
  });

  test("may name any figure by its key, and those of require by their names", () => {
    for (const { key } of STUDIED_FIGURES) expect(studiedFigure(key)).toMatchObject({ key });
    expect(studiedFigure("clean_bite")).toMatchObject({ key: "cleanBiteMPerS" });
    expect(studiedFigure("bite at 10 km/h")).toMatchObject({ measure: "length", label: "Bite at 2.778 m/s" });
  });
});

describe("the files of a sweep", () => {
  const asked = study(PLATE, {
    lets: ["width from 10 mm to 40 mm"],
    counts: [2],
    figures: ["mass", "balance"],
  });
  const rows = rowsOf(asked);

  test("comma-separated values have a header with units, and nothing for what is not known", () => {
    const [header, first, second, end] = sweepCsv(asked, rows).split("\r\n");
    expect(header).toBe("width_mm,sound,kept,massKg,balanceGrade");
    expect(first).toBe("10,0,,,");
    expect(second?.split(",").slice(0, 3)).toEqual(["40", "1", "1"]);
    expect(Number(second?.split(",")[3])).toBeCloseTo((200 * 40 - 100 * Math.PI) * 8 * 7850e-9, 9);
    expect(end).toBe("");
  });

  test("JSON has stable keys and null for what is not known", () => {
    const told = JSON.parse(JSON.stringify(sweepJson(asked, rows)));
    expect(told).toMatchObject({
      bar: "Plank",
      variant: null,
      lets: [{ name: "width", unit: "mm", from: 10, to: 40, count: 2 }],
      figures: [{ key: "massKg" }, { key: "balanceGrade" }],
      rows: [
        { values: [10], sound: false, keepsRequirements: null, figures: { massKg: null } },
        { values: [40], sound: true, keepsRequirements: true },
      ],
    });
  });
});
