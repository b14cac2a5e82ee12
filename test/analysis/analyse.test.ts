import { describe, expect, it } from "vitest";
import { analyse, checkSource } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";

/** A plate of 200 × 40 × 10 mm with a bore. */
const plate = (
  rest = "",
  path = "line (-100 mm, 20 mm) line (-100 mm, -20 mm) line (100 mm, -20 mm)",
) => `bar "Plate"
thickness 10 mm
density 8000 kg/m^3
outline { from (100 mm, 20 mm) ${path} close }
bore 16 mm
spin 3000 rpm ccw
${rest}`;

const analysed = (text: string) => analyse(readSource(text));
const codes = (text: string) => checkSource(readSource(text)).map(({ code }) => code);

describe("what is measured", () => {
  it("is everything on a sound bar", () => {
    const { section, mass, bite } = analysed(plate()).assessment;
    expect([section, mass, bite].filter((part) => part === null)).toEqual([]);
  });

  it("is no area where the loop crosses itself", () => {
    const { assessment, problems } = analysed(
      plate("", "line (-100 mm, -20 mm) line (-100 mm, 20 mm) line (100 mm, -20 mm)"),
    );
    expect(problems.map(({ code }) => code)).toContain("loop-crosses-itself");
    expect([assessment.section, assessment.mass, assessment.bite]).toEqual([null, null, null]);
  });

  it("is no negative plate where a hole is larger than it", () => {
    const { assessment, figures } = analysed(plate("hole (0 mm, 900 mm) diameter 800 mm"));
    expect(assessment.section).toBeNull();
    expect(figures.mass["massKg"]).toBeNull();
  });

  it("is no bite where the axis is outside, but still a mass", () => {
    const text = plate().replaceAll("20 mm)", "20 mm + 60 mm)").replaceAll("-20 mm + 60 mm)", "40 mm)");
    const { assessment, problems } = analysed(text);
    expect(problems.map(({ code }) => code)).toContain("axis-outside");
    expect(assessment.bite).toBeNull();
    expect(assessment.mass?.massKg).toBeGreaterThan(0);
  });

  it("is studied on a face, a rounded edge and a line of approach aside of the axis", () => {
    for (const target of ["face", "round 4 mm", "edge offset 10 mm", "round 4 mm offset -10 mm"]) {
      const { assessment, problems } = analysed(plate(`target ${target}`));
      expect(assessment.bite?.curve.at(-1)?.maxMm, target).toBeGreaterThan(0);
      expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
    }
  });

  it("is no bite on a target that passes the bar by, which is said", () => {
    const { assessment, problems } = analysed(plate("target edge offset 600 mm"));
    expect(assessment.bite).toBeNull();
    expect(problems).toContainEqual(expect.objectContaining({ code: "target-passes", severity: "warning" }));
    expect(analysed(plate("target face offset 600 mm")).assessment.bite).not.toBeNull();
  });
});

describe("requirements", () => {
  it.each([
    ["mass <= 0.63 kg", []],
    ["mass <= 0.6 kg", ["mass-over-class"]],
    ["mass >= 1 kg", ["require-failed"]],
    ["inertia >= 0.001 kg*m^2", []],
    ["inertia >= 1 kg*m^2", ["require-failed"]],
    ["energy <= 200 J", []],
    ["energy <= 100 J", ["require-failed"]],
    ["tip_speed <= 33 m/s", []],
    ["tip_speed <= 30 m/s", ["require-failed"]],
    ["max_radius <= 102 mm", []],
    ["max_radius <= 4 in", ["require-failed"]],
    ["imbalance <= 1 g*mm", []],
    ["balance <= G1", []],
    ["clean_bite >= 1 m/s", ["require-failed"]],
    ["bite at 1 m/s >= 0.1 mm", []],
    ["bite at 1 m/s >= 1 m", ["require-failed"]],
  ] as const)("require %s", (requirement, expected) => {
    expect(codes(plate(`require ${requirement}\n`))).toEqual(expected);
  });

  it("tell by how much they fail", () => {
    const [problem] = checkSource(readSource(plate("require mass <= 0.6 kg\n")));
    expect(problem?.message).toMatch(/623\.9 g, over the limit of 600 g by 23\.9\d* g \(4 %\)/);
  });

  it("cannot be checked without their figure, and say why", () => {
    const text = plate("require mass <= 1 kg\n").replace("density 8000 kg/m^3\n", "");
    const problem = checkSource(readSource(text)).find(({ code }) => code === "require-unknown");
    expect(problem?.message).toContain("material");
  });

  it("of balance fail with advice that balances: the metal named, taken off where named", () => {
    const text = plate("hole (60 mm, 0 mm) diameter 12 mm\nrequire balance <= G6.3\n");
    const { assessment, problems } = analysed(text);
    const failed = problems.find(({ code }) => code === "imbalance-over-grade");
    const [, grams, radius] = /taking ([\d.]+) g off at ([\d.]+) mm/.exec(failed?.message ?? "") ?? [];
    const imbalance = assessment.mass?.imbalanceGMm ?? 0;
    // By hand: the hole's own metal, 8000 kg/m³ × 10 mm × π 36 mm², at 60 mm.
    expect(imbalance).toBeCloseTo(8e-3 * 10 * Math.PI * 36 * 60, 6);
    expect(Math.abs((Number(grams) * Number(radius)) / imbalance - 1)).toBeLessThan(0.06);
    expect(assessment.mass?.imbalanceDeg).toBeCloseTo(180, 9);
  });
});

describe("the balance that is expected where none is required", () => {
  const lopsided = plate("hole (60 mm, 0 mm) diameter 12 mm\n");

  it("is G40, and a warning", () => {
    const [problem] = checkSource(readSource(lopsided));
    expect(problem).toMatchObject({ code: "imbalance-over-grade", severity: "warning" });
    expect(problem?.message).toContain("G40");
  });

  it("is the grade of the settings", () => {
    expect(checkSource(readSource(lopsided), { balanceGrade: 4000 })).toEqual([]);
  });
});

describe("variants", () => {
  const text = plate(
    'require mass <= 0.7 kg\nvariant "thick" { thickness 12 mm }\nvariant "thin" { thickness 8 mm }\n',
  );

  it("are judged each by itself, and named where only they fail", () => {
    const problems = checkSource(readSource(text));
    expect(problems.map(({ message }) => message)).toEqual([expect.stringContaining('In "thick": Mass')]);
  });

  it("repeat no problem that the bar itself has", () => {
    const all = checkSource(readSource(text.replace("0.7 kg", "0.1 kg")));
    expect(all.map(({ code }) => code)).toEqual(["mass-over-class"]);
  });
});
