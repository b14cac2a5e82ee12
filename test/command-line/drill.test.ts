import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MemoryWorld } from "./memory-world.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "../../samples/brass-limpet-one-tooth.bar"), "utf8");
const OFF = SAMPLE.replace("let tail = 89.77 mm", "let tail = 91 mm");
const MEASURED = ["--measured", "2.4 g at 110 mm, 190 deg"];

function world(text = OFF) {
  return new MemoryWorld({ "a.bar": text });
}

describe("drill", () => {
  it("prints holes, what they come to and the cautions in 80 columns, and leaves the file alone", async () => {
    const called = world();
    expect(await called.run("drill", "a.bar")).toBe(0);
    expect(called.printed).toMatch(/^ {2}Now +G\d+, [\d.]+ g·mm/m);
    expect(called.printed).toMatch(/^ {2}Wanted +G16, /m);
    expect(called.printed).toMatch(
      /^ +1 +[\d.]+ mm +[\d.]+ +[\d.]+ +-?[\d.]+ +-?[\d.]+ +[\d.]+ +[\d.]+ +[\d.]+$/m,
    );
    expect(called.printed).toContain("A hole is a notch");
    expect(called.printed).toContain("safety inspector");
    for (const line of called.printed.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    expect(called.files.get("a.bar")).toBe(OFF);
  });

  it("writes through holes when told to, after which there is nothing to drill", async () => {
    const called = world();
    expect(await called.run("drill", "a.bar", "--through")).toBe(0);
    expect(called.printed).toMatch(/^hole \([\d.]+ mm @ [\d.]+ deg\) diameter [\d.]+ mm$/m);
    expect(called.printed).toContain("--write puts these lines");
    expect(called.files.get("a.bar")).toBe(OFF);
    expect(await called.run("drill", "a.bar", "--through", "--write")).toBe(0);
    const written = called.files.get("a.bar") ?? "";
    expect(written.length).toBeGreaterThan(OFF.length);
    const again = world(written);
    expect(await again.run("check", "a.bar")).toBe(0);
    expect(await again.run("drill", "a.bar", "--through", "--write")).toBe(0);
    expect(again.printed).toContain("nothing to drill");
    expect(again.files.get("a.bar")).toBe(written);
  });

  it("tells all of it as JSON with the units in the keys", async () => {
    const called = world(SAMPLE);
    expect(
      await called.run("drill", "a.bar", "--json", "--grade", "G6.3", ...MEASURED, "--drills", "5, 6.5"),
    ).toBe(0);
    const json = JSON.parse(called.printed);
    expect(Object.keys(json)).toEqual([
      "file",
      "variant",
      "solved",
      "reason",
      "message",
      "aim",
      "before",
      "after",
      "holes",
      "takenG",
      "coupleGMm2",
      "insteadAdd",
      "edits",
      "newProblems",
      "written",
    ]);
    expect(json.before.imbalanceGMm).toBeCloseTo(264, 9);
    expect(json.after.balanceGrade).toBeLessThanOrEqual(6.3);
    for (const hole of json.holes) expect([5, 6.5]).toContain(hole.diameterMm);
    expect(json.insteadAdd.angleDeg).toBeCloseTo(10, 9);
    expect(json.insteadAdd.massG * json.insteadAdd.radiusMm).toBeCloseTo(264, 9);
  });

  it("says when it cannot, how near it came, and exits with 1", async () => {
    const called = world();
    expect(await called.run("drill", "a.bar", "--measured", "200 g at 100 mm, 90 deg", "--holes", "2")).toBe(
      1,
    );
    expect(called.printed).toContain("Not solved: The nearest found is G");
    const broken = world(OFF.replace("bore 22 mm", "bore 22"));
    expect(await broken.run("drill", "a.bar")).toBe(1);
    expect(broken.complained).toContain("a.bar: not drilled: Mend the file's errors first");
  });

  it.each([
    [["--write"], "--write needs --through"],
    [["--through", "--write", ...MEASURED], "--measured is of one part"],
    [["--grade", "fine"], "--grade is a balance grade such as G16"],
    [["--measured", "2.4 mm at 110 mm, 35 deg"], "a mass such as 1.6 kg"],
    [["--drills", "5,x"], "--drills"],
    [["--drills", "500"], "is no drill"],
    [["--radius", "40 mm"], "--radius is a range"],
    [["--angle", "1 mm to 2 mm"], "an angle such as"],
    [["--floor=-1 mm"], "--floor is a length"],
    [["--holes", "0"], "--holes is a whole number"],
    [["--variant", "none"], 'no variant "none"'],
  ])("refuses the call %j", async (words, why) => {
    const called = world();
    expect(await called.run("drill", "a.bar", ...words)).toBe(2);
    expect(called.complained).toContain(why);
    expect(called.files.get("a.bar")).toBe(OFF);
  });

  it("takes drills as fractions of an inch and windows with units", async () => {
    const called = world();
    const words = ["--drills", "1/4, 5/16 in", "--radius", "2 in to 75 mm", "--angle", "150 deg to 210 deg"];
    expect(await called.run("drill", "a.bar", "--json", ...words)).toBe(0);
    for (const hole of JSON.parse(called.printed).holes) {
      expect(["1/4 in", "5/16 in"]).toContain(hole.drill);
      expect(hole.radiusMm).toBeGreaterThanOrEqual(50.8);
      expect(hole.angleDeg).toBeGreaterThanOrEqual(150);
      expect(hole.angleDeg).toBeLessThanOrEqual(210);
    }
  });
});
