import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MemoryWorld } from "./memory-world.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "../../samples/brass-limpet-one-tooth.bar"), "utf8");

function world(text = SAMPLE) {
  return new MemoryWorld({ "a.bar": text });
}

describe("tolerance", () => {
  it("tells limits with their standards, the sample and what to do in 80 columns", async () => {
    const called = world();
    expect(await called.run("tolerance", "a.bar", "--parts", "500")).toBe(0);
    expect(called.printed).toContain("EN 10029:1991 class A: -0.5 to +1.2 mm");
    expect(called.printed).toContain("ISO 9013 tolerance class 1");
    expect(called.printed).toMatch(/^ {2}Grade, mm\/s +[\d.]+ +[\d.]+ +[\d.]+ +[\d.]+ +[\d.]+$/m);
    expect(called.printed).toMatch(/^ {2}Within G16 +[\d.]+.% of the parts/m);
    expect(called.printed).toMatch(/^ {2}As stock on a blank +[\d.]+ mm all round/m);
    expect(called.printed).toContain("an assumption");
    expect(called.printed).toContain("safety inspector");
    for (const line of called.printed.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("tells all of it as JSON, the same for the same seed", async () => {
    const words = ["--json", "--seed", "5", "--parts", "400", "--plate=-0.1 mm to 0.2 mm", "--cut", "0.2 mm"];
    const [first, second] = [world(), world()];
    expect(await first.run("tolerance", "a.bar", ...words, "--spread", "normal", "--edges", "together")).toBe(
      0,
    );
    expect(
      await second.run("tolerance", "a.bar", ...words, "--spread", "normal", "--edges", "together"),
    ).toBe(0);
    expect(first.printed).toBe(second.printed);
    const json = JSON.parse(first.printed);
    expect(json).toMatchObject({
      file: "a.bar",
      variant: null,
      ok: true,
      given: {
        thicknessLowerMm: -0.1,
        thicknessUpperMm: 0.2,
        edges: "together",
        spread: "normal",
        parts: 400,
        seed: 5,
      },
    });
    expect(json.imbalanceGMm.p95).toBeGreaterThan(json.imbalanceGMm.p50);
    expect(json.within.from).toBeLessThanOrEqual(json.within.share);
  });

  it("says what it has no table for, and exits with 1", async () => {
    const called = world(SAMPLE.replace("thickness 10 mm", "thickness 60 mm"));
    expect(await called.run("tolerance", "a.bar")).toBe(1);
    expect(called.complained).toContain("a.bar: not studied: The table of ISO 9013");
    expect(await called.run("tolerance", "a.bar", "--cut", "1 mm", "--parts", "100")).toBe(0);
  });

  it.each([
    [["--plate", "E"], "--plate is A, B, C, D or limits"],
    [["--plate=0.3 mm to -0.2 mm"], "the lower limit comes first"],
    [["--cut", "2"], "a length such as 12 mm"],
    [["--wedge", "3 g"], "a length such as 12 mm"],
    [["--edges", "some"], "--edges is each or together"],
    [["--spread", "even"], "--spread is uniform or normal"],
    [["--parts", "5"], "--parts is a whole number from 100"],
    [["--seed", "x"], "--seed is a whole number"],
    [["--grade", "x"], "--grade is a balance grade"],
  ])("refuses the call %j", async (words, why) => {
    const called = world();
    expect(await called.run("tolerance", "a.bar", ...words)).toBe(2);
    expect(called.complained).toContain(why);
  });
});
