import { readFileSync } from "node:fs";
import { join } from "node:path";
import DxfParser from "dxf-parser";
import { describe, expect, it } from "vitest";
import { MemoryWorld } from "./memory-world.ts";

const SAMPLES = join(import.meta.dirname, "../../samples");
const TWO_TOOTH = readFileSync(join(SAMPLES, "pickled-heron-two-tooth.bar"), "utf8");

/** A 200 × 40 mm plate, 10 mm thick, of 8000 kg/m³: 0.64 kg less its bore, by hand. */
const PLATE = `bar "Plate"
thickness 10 mm
density 8000 kg/m^3
outline {
  from (100 mm, 20 mm)
  line (-100 mm, 20 mm)
  line (-100 mm, -20 mm)
  line (100 mm, -20 mm)
  close
}
bore 16 mm
spin 3000 rpm ccw
variant "thick" { thickness 12 mm }
`;

function world(text = PLATE, terminal = { colour: false, columns: 80 }) {
  return new MemoryWorld({ "a.bar": text }, terminal);
}

describe("the call", () => {
  it("prints its use for help, and the version", async () => {
    const help = world();
    expect(await help.run("--help")).toBe(0);
    for (const command of ["report", "check", "export", "format"])
      expect(help.printed).toContain(`barwright ${command}`);
    const version = world();
    expect(await version.run("--version")).toBe(0);
    expect(version.printed).toMatch(/^barwright \d+\.\d+\.\d+\n$/);
  });

  it.each([
    [[]],
    [["frobnicate"]],
    [["report"]],
    [["report", "missing.bar"]],
    [["report", "a.bar", "b.bar"]],
    [["report", "a.bar", "--nonsense"]],
    [["report", "a.bar", "--units", "furlongs"]],
    [["report", "a.bar", "--variant", "no such"]],
    [["check"]],
    [["format"]],
    [["export", "a.bar"]],
    [["export", "a.bar", "--to", "out.png"]],
    [["export", "a.bar", "--to", "out.dxf", "--release", "13"]],
  ])("refuses %j with status 2 and one reason on the error stream", async (argv) => {
    const called = world();
    expect(await called.run(...argv)).toBe(2);
    expect(called.complained).toMatch(/^barwright: .+/);
    expect(called.printed).toBe("");
  });

  it("names the variants there are when one is not there", async () => {
    const called = world();
    await called.run("report", "a.bar", "--variant", "thin");
    expect(called.complained).toContain('"thick"');
  });
});

describe("report", () => {
  it("gives every number as JSON with the keys that scripts rely on", async () => {
    const called = world();
    expect(await called.run("report", "a.bar", "--json")).toBe(0);
    const json = JSON.parse(called.printed);
    expect(json).toMatchObject({ bar: "Plate", variant: null, bite: { target: "edge", direction: "ccw" } });
    const groups = ["shape", "mass", "spin", "bite", "robot", "opponent", "budget", "event"];
    expect(Object.keys(json)).toEqual(["bar", "variant", ...groups, "problems", "cautions"]);
    expect(json.cautions.join(" ")).toContain("Spinning bars kill");
    for (const key of [
      "areaMm2",
      "perimeterMm",
      "centroidMm",
      "maxRadiusMm",
      "boundsMm",
      "secondMomentsMm4",
      "segments",
      "holes",
    ])
      expect(json.shape).toHaveProperty(key);
    for (const key of [
      "massKg",
      "inertiaKgM2",
      "imbalanceGMm",
      "imbalanceDeg",
      "eccentricityMm",
      "balanceGrade",
      "permissibleGMm",
    ])
      expect(json.mass).toHaveProperty(key);
    for (const key of ["rpm", "tipSpeedMPerS", "energyJ", "angularMomentumKgM2PerS", "imbalanceForceN"])
      expect(json.spin).toHaveProperty(key);
    expect(Object.keys(json.mass.permissibleGMm)).toEqual(["G6.3", "G16", "G40"]);
    expect(json.bite.curve).toHaveLength(40);
    const point = ["closingMPerS", "maxMm", "meanMm", "squareShare", "idealMm"];
    expect(Object.keys(json.bite.curve[0]).slice(0, 5)).toEqual(point);
    for (const key of ["minMm", "tenthMm", "medianMm", "ninetiethMm", "toothShare", "passedShare", "strikes"])
      expect(json.bite.curve[0]).toHaveProperty(key);
    expect(json.bite.forDepth[0]).toHaveProperty("closingMPerS");
    // A tenth of the spin bites as ten times the closing speed does.
    expect(json.bite.spinningUp).toHaveLength(10);
    expect(json.bite.spinningUp.at(-1).maxMm).toBe(json.bite.curve.at(-1).maxMm);
  });

  it("agrees with the plate worked out by hand", async () => {
    const called = world();
    await called.run("report", "a.bar", "--json");
    const { shape, mass, spin } = JSON.parse(called.printed);
    const areaMm2 = 200 * 40 - Math.PI * 64;
    expect(shape.areaMm2).toBeCloseTo(areaMm2, 8);
    expect(mass.massKg).toBeCloseTo(areaMm2 * 10 * 8e-6, 12);
    // Rectangle bh(b² + h²)/12 less circle πr⁴/2, handbook formulas from memory; ×ρt, mm⁴ to m⁴.
    const polarMm4 = (200 * 40 * (200 ** 2 + 40 ** 2)) / 12 - (Math.PI * 8 ** 4) / 2;
    const inertia = 8000 * 0.01 * polarMm4 * 1e-12;
    expect(mass.inertiaKgM2 / inertia).toBeCloseTo(1, 12);
    const omega = (3000 * Math.PI) / 30;
    expect(spin.energyJ / (0.5 * inertia * omega ** 2)).toBeCloseTo(1, 12);
    expect(spin.tipSpeedMPerS).toBeCloseTo(Math.hypot(0.1, 0.02) * omega, 10);
    expect(mass.imbalanceGMm).toBeLessThan(1e-6);
    expect(mass.imbalanceDeg).toBeNull();
  });

  it("works out a variant", async () => {
    const [base, thick] = [world(), world()];
    await base.run("report", "a.bar", "--json");
    await thick.run("report", "a.bar", "--json", "--variant", "thick");
    const ratio = JSON.parse(thick.printed).mass.massKg / JSON.parse(base.printed).mass.massKg;
    expect(ratio).toBeCloseTo(1.2, 12);
    expect(JSON.parse(thick.printed).variant).toBe("thick");
  });

  it("tells unknown values as null, never 0, when the material is missing", async () => {
    const called = world(PLATE.replace("density 8000 kg/m^3\n", ""));
    await called.run("report", "a.bar", "--json");
    const { mass, spin, shape } = JSON.parse(called.printed);
    expect(mass.massKg).toBeNull();
    expect(spin.energyJ).toBeNull();
    expect(shape.areaMm2).toBeGreaterThan(0);
  });

  it("stays within 80 columns, without colour codes in a pipe and with the cautions", async () => {
    for (const units of ["mm", "in"]) {
      const called = world(TWO_TOOTH);
      expect(await called.run("report", "a.bar", "--units", units)).toBe(0);
      const lines = called.printed.split("\n");
      expect(lines.length).toBeGreaterThan(30);
      expect(lines.filter((line) => line.length > 80)).toEqual([]);
      expect(called.printed).not.toContain("\u001b");
      expect(called.printed).toContain("Spinning bars kill");
    }
  });

  it("colours a terminal that takes colour, and says the same", async () => {
    const [plain, coloured] = [world(TWO_TOOTH), world(TWO_TOOTH, { colour: true, columns: 80 })];
    await plain.run("report", "a.bar");
    await coloured.run("report", "a.bar");
    expect(coloured.printed).toContain("\u001b[");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colour codes are what is taken out
    expect(coloured.printed.replace(/\u001b\[[0-9;]*m/g, "")).toBe(plain.printed);
  });

  it("reports what it can of a broken file, and exits 1", async () => {
    const called = world(`${PLATE}let x = 1 mm +\n`);
    expect(await called.run("report", "a.bar", "--json")).toBe(1);
    const json = JSON.parse(called.printed);
    expect(json.problems).toContainEqual(expect.objectContaining({ severity: "error", line: 14 }));
    expect(json.shape.areaMm2).toBeGreaterThan(0);
  });
});

describe("check", () => {
  it("is silent and 0 on a good file", async () => {
    const called = world();
    expect(await called.run("check", "a.bar")).toBe(0);
    expect(called.printed).toBe("");
  });

  it("prints one problem a line with place, severity, code and message", async () => {
    const called = world(PLATE.replace("thickness 10 mm", "thickness 10"));
    expect(await called.run("check", "a.bar")).toBe(1);
    expect(called.printed).toMatch(/^a\.bar:2:\d+ error missing-unit .*12 mm.*\n/);
  });

  it("fails a file whose requirement fails, and says by how much", async () => {
    const called = world(`${PLATE}require mass <= 0.5 kg\n`);
    expect(await called.run("check", "a.bar")).toBe(1);
    expect(called.printed).toMatch(/mass-over-class .*623\.9 g.*0\.5|mass-over-class .*623\.9 g.*500 g/);
  });

  it("looks at every variant and names it", async () => {
    const called = world(`${PLATE}require mass <= 0.7 kg\n`);
    expect(await called.run("check", "a.bar")).toBe(1);
    expect(called.printed).toContain('In "thick":');
  });

  it("tells JSON for many files", async () => {
    const called = new MemoryWorld({ "a.bar": PLATE, "b.bar": "nonsense\n" });
    expect(await called.run("check", "a.bar", "b.bar", "--json")).toBe(1);
    const list = JSON.parse(called.printed);
    expect(list.map(({ file }: { file: string }) => file)).toEqual(["a.bar", "b.bar"]);
    expect(list[0].problems).toEqual([]);
    expect(list[1].problems.length).toBeGreaterThan(0);
  });
});

describe("export", () => {
  it.each(["dxf", "svg", "csv", "json", "md"])("writes .%s by the ending", async (ending) => {
    const called = world();
    expect(await called.run("export", "a.bar", "--to", `out.${ending}`)).toBe(0);
    expect(called.files.get(`out.${ending}`)?.length).toBeGreaterThan(200);
    expect(called.printed).toContain(`out.${ending} written`);
  });

  it("writes a DXF that another reader measures alike, in both releases and units", async () => {
    for (const release of ["2000", "r12"])
      for (const units of ["mm", "in"]) {
        const called = world();
        await called.run("export", "a.bar", "--to", "o.dxf", "--release", release, "--units", units);
        const drawing = new DxfParser().parseSync(called.files.get("o.dxf") ?? "");
        const circle = drawing?.entities.find(({ type }) => type === "CIRCLE");
        expect(circle).toMatchObject({ layer: "CUT_INNER" });
        expect(circle && "radius" in circle ? circle.radius : 0).toBeCloseTo(
          units === "mm" ? 8 : 8 / 25.4,
          9,
        );
      }
  });

  it("never overwrites without --force", async () => {
    const called = new MemoryWorld({ "a.bar": PLATE, "out.dxf": "precious" });
    expect(await called.run("export", "a.bar", "--to", "out.dxf")).toBe(2);
    expect(called.files.get("out.dxf")).toBe("precious");
    expect(await called.run("export", "a.bar", "--to", "out.dxf", "--force")).toBe(0);
    expect(called.files.get("out.dxf")).toContain("CUT_OUTER");
  });

  it("writes nothing for an outline with errors, and says which", async () => {
    const called = world(PLATE.replace("  close\n", ""));
    expect(await called.run("export", "a.bar", "--to", "out.dxf")).toBe(1);
    expect(called.files.has("out.dxf")).toBe(false);
    expect(called.complained).toContain("nothing was written");
  });

  it("lets a failed requirement be the builder's decision, but exits 1", async () => {
    const called = world(`${PLATE}require mass <= 0.5 kg\n`);
    expect(await called.run("export", "a.bar", "--to", "out.dxf")).toBe(1);
    expect(called.files.has("out.dxf")).toBe(true);
  });
});

describe("format", () => {
  const untidy = 'bar   "X"\nthickness 10   mm # plate\n';

  it("prints the tidy text, and changes the file only when told to", async () => {
    const called = world(untidy);
    expect(await called.run("format", "a.bar")).toBe(0);
    expect(called.printed).toBe('bar "X"\nthickness 10 mm   # plate\n');
    expect(called.files.get("a.bar")).toBe(untidy);
    await called.run("format", "a.bar", "--write");
    expect(called.files.get("a.bar")).toBe(called.printed);
  });
});
