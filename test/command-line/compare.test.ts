import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { SAMPLES } from "../samples/samples.ts";
import { MemoryWorld } from "./memory-world.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "../../samples/pickled-heron-two-tooth.bar"), "utf8");

function world(files: Readonly<Record<string, string>> = { "a.bar": SAMPLE }) {
  return new MemoryWorld(files);
}

describe("compare", () => {
  it("puts the variants of a file beside the bar as it stands", async () => {
    const called = world();
    expect(await called.run("compare", "a.bar")).toBe(0);
    const [head = ""] = called.printed.split("\n");
    expect(head).toMatch(/^ +as written +practice speed +long reach$/);
    expect(called.printed).toMatch(/^ {2}Mass +1\.051 kg +1\.051 kg +1\.169 kg\n +\+11\.2 % worse$/m);
    expect(called.printed).toMatch(/^ {2}Spin +4200 rpm +1800 rpm +4200 rpm\n +-57\.1 %$/m);
    expect(called.printed).toContain("Spinning bars kill");
  });

  it("stays within 80 columns, and repeats labels and reference where there are many bars", async () => {
    const files = Object.fromEntries(SAMPLES.map(({ file, text }) => [`folder/${file}`, text]));
    for (const units of ["mm", "in"]) {
      const called = world(files);
      await called.run("compare", ...Object.keys(files), "--units", units);
      for (const line of called.printed.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
      // Six bars, two beside the reference at a time.
      expect(called.printed.match(/^ +brass-limpet-one/gm)).toHaveLength(3);
      expect(called.printed.match(/^ {2}Mass /gm)).toHaveLength(3 * 2);
    }
  });

  it("leaves out what is the same, when told to", async () => {
    const called = world();
    await called.run("compare", "a.bar", "--only-different", "--variant", "long reach");
    expect(called.printed).toMatch(/^ +as written +long reach$/m);
    expect(called.printed).toMatch(/^ {2}Mass /m);
    expect(called.printed).not.toMatch(/^ {2}Spin /m);
    expect(called.printed).not.toContain("practice speed");
    const same = world({ "a.bar": SAMPLE, "b.bar": SAMPLE });
    await same.run("compare", "a.bar", "b.bar", "--only-different");
    expect(same.printed).toContain("Nothing differs.");
  });

  it("compares files, as they stand or in a variant", async () => {
    const heavier = SAMPLE.replace("thickness 12 mm", "thickness 15 mm");
    const called = world({ "x/a.bar": SAMPLE, "x/b.bar": heavier });
    expect(await called.run("compare", "x/a.bar", "x/b.bar")).toBe(0);
    expect(called.printed).toMatch(/^ +a\.bar +b\.bar$/m);
    expect(called.printed).toMatch(/^ {2}Mass +1\.051 kg +1\.314 kg\n +\+25 % worse$/m);
    const named = world({ "x/a.bar": SAMPLE, "y/a.bar": heavier });
    await named.run("compare", "x/a.bar", "y/a.bar", "--variant", "long reach");
    expect(named.printed).toMatch(/^ +x\/a\.bar: long reach +y\/a\.bar: long reach$/m);
  });

  it("says in words where a requirement breaks, and says so in its exit status", async () => {
    const heavy = SAMPLE.replace(
      'variant "long reach" { reach = 142 mm }',
      'variant "heavy" { thickness 20 mm }',
    );
    const called = world({ "a.bar": heavy });
    expect(await called.run("compare", "a.bar", "--variant", "heavy")).toBe(1);
    expect(called.printed).toMatch(
      /^ {2}Mass at most 1\.4 kg +met by 348\.\d g +NOT MET by 352\.\d g\n +worse$/m,
    );
    expect(called.complained).toMatch(/^a\.bar:\d+:\d+ error mass-over-class /);
    expect(called.complained.trim().split("\n")).toHaveLength(1);
  });

  it("tells all of it as JSON with stable keys", async () => {
    const called = world();
    expect(await called.run("compare", "a.bar", "--json")).toBe(0);
    const { bars, cautions } = JSON.parse(called.printed);
    expect(cautions.join(" ")).toContain("Spinning bars kill");
    expect(bars).toHaveLength(3);
    for (const bar of bars)
      expect(Object.keys(bar)).toEqual([
        "file",
        "bar",
        "variant",
        "shape",
        "mass",
        "spin",
        "bite",
        "robot",
        "opponent",
        "budget",
        "event",
        "requirements",
        "biteCurve",
        "problems",
      ]);
    const [reference, , long] = bars;
    expect(Object.keys(long.mass.massKg)).toEqual(["value", "difference", "percent", "same", "verdict"]);
    expect(long.mass.massKg.difference).toBeCloseTo(long.mass.massKg.value - reference.mass.massKg.value, 12);
    expect(reference.mass.massKg).toMatchObject({ difference: 0, percent: 0, same: true, verdict: "same" });
    expect(Object.keys(long.requirements[0])).toEqual([
      "figure",
      "key",
      "relation",
      "atMPerS",
      "ofEvent",
      "own",
      "limit",
      "value",
      "margin",
      "holds",
      "verdict",
    ]);
    expect(Object.keys(long.biteCurve[0])).toEqual([
      "closingMPerS",
      "maxMm",
      "meanMm",
      "squareShare",
      "cleanShare",
      "toothShare",
      "idealMm",
      "maxDifferenceMm",
      "maxPercent",
      "meanDifferenceMm",
      "meanPercent",
    ]);
    const report = world();
    await report.run("report", "a.bar", "--variant", "long reach", "--json");
    const alone = JSON.parse(report.printed);
    expect(long.mass.massKg.value).toBe(alone.mass.massKg);
    expect(long.biteCurve.map(({ maxMm }: { maxMm: number }) => maxMm)).toEqual(
      alone.bite.curve.map(({ maxMm }: { maxMm: number }) => maxMm),
    );
    const short = world();
    await short.run("compare", "a.bar", "--json", "--only-different");
    expect(Object.keys(JSON.parse(short.printed).bars[0].bite)).not.toContain("target");
  });

  it.each([
    [["compare"], "Name the outline file"],
    [["compare", "gone.bar"], "Cannot read gone.bar"],
    [["compare", "plain.bar"], "plain.bar has no variants to compare; name a second file"],
    [["compare", "a.bar", "--variant", "short"], 'no variant "short"; it has "practice speed", "long reach"'],
    [["compare", "a.bar", "plain.bar", "--variant", "long reach"], "it has none"],
    [["compare", "a.bar", "--units", "feet"], "--units is mm or in"],
    [["compare", "a.bar", "--better"], "--better"],
  ])("refuses %j", async (argv, why) => {
    const called = world({ "a.bar": SAMPLE, "plain.bar": SAMPLE.replaceAll(/^variant.*$/gm, "") });
    expect(await called.run(...argv)).toBe(2);
    expect(called.complained).toContain(why);
    expect(called.printed).toBe("");
  });

  it("compares what can be worked out of a broken file", async () => {
    const called = world({
      "a.bar": SAMPLE,
      "broken.bar": SAMPLE.replace("thickness 12 mm", "thickness 12"),
    });
    expect(await called.run("compare", "a.bar", "broken.bar")).toBe(1);
    expect(called.printed).toMatch(/^ {2}Mass +1\.051 kg +–$/m);
    expect(called.printed).toMatch(/^ {2}Area +11162 mm² +11162 mm²$/m);
    expect(called.complained).toMatch(/^broken\.bar:/);
  });

  it("tells better and worse in words, colours or not", async () => {
    const called = new MemoryWorld({ "a.bar": SAMPLE }, { colour: true, columns: 80 });
    await called.run("compare", "a.bar");
    expect(called.printed).toContain("\u001b[31mworse\u001b[39m");
    expect(called.printed).toContain("\u001b[32mbetter\u001b[39m");
  });
});
