import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MemoryWorld } from "./memory-world.ts";

const textOf = (name: string) => readFileSync(join(import.meta.dirname, `../../samples/${name}.bar`), "utf8");
const world = (name = "brass-limpet-one-tooth") => new MemoryWorld({ "a.bar": textOf(name) });

describe("wear", () => {
  it("prints a row for each wear, what it comes to and the cautions in 80 columns", async () => {
    for (const words of [[], ["--at", "face", "--teeth", "one", "--by", "0.02 in"]]) {
      const called = world();
      expect(await called.run("wear", "a.bar", ...words)).toBe(0);
      expect(called.printed.match(/^ +[\d.]+ +1[12]\d[\d.]* +0\.7\d+ .*$/gm)).toHaveLength(6);
      expect(called.printed).toMatch(/Not within G16 any more from [\d.]+ mm on\./);
      expect(called.printed).toContain("safety inspector");
      for (const line of called.printed.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    }
    const inches = world("old-bellwether-inch");
    expect(await inches.run("wear", "a.bar", "--by", "0.1 in, 0.2 in")).toBe(0);
    expect(inches.printed).toMatch(/^ +0\.2 +14\.8 +/m);
  });

  it("tells all of it as JSON", async () => {
    const called = world();
    expect(await called.run("wear", "a.bar", "--json", "--by", "0.5 mm, 1 mm, 200 mm")).toBe(0);
    const json = JSON.parse(called.printed);
    expect(json).toMatchObject({
      file: "a.bar",
      variant: null,
      ok: true,
      model: "tip",
      teeth: "all",
      closingMPerS: 6,
    });
    expect(json.rows.map(({ byMm, isSound }: { byMm: number; isSound: boolean }) => [byMm, isSound])).toEqual(
      [
        [0, true],
        [0.5, true],
        [1, true],
        [200, false],
      ],
    );
    expect(Object.keys(json.rows[1])).not.toContain("outline");
    expect(json.rows[1].tipRadiusMm).toBeCloseTo(Math.hypot(125, 2) - 0.5, 9);
  });

  it.each([
    [["--at", "side"], "--at is tip or face"],
    [["--teeth", "two"], "--teeth is all or one"],
    [["--by", "1 kg"], "a length such as 12 mm"],
    [["--by", "0 mm"], "--by is a length of more than 0 mm"],
  ])("refuses the call %j", async (words, why) => {
    const called = world();
    expect(await called.run("wear", "a.bar", ...words)).toBe(2);
    expect(called.complained).toContain(why);
  });
});
