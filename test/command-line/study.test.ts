import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MemoryWorld } from "./memory-world.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "../../samples/brass-limpet-one-tooth.bar"), "utf8");

async function call(...words: string[]) {
  const world = new MemoryWorld({ "a.bar": SAMPLE });
  const status = await world.run("study", "a.bar", ...words);
  return { world, status, ...world };
}

describe("study", () => {
  it("shows figures over the bounds of a let, and where the requirements are kept", async () => {
    const { status, printed } = await call(
      "--let",
      "tail",
      "--steps",
      "5",
      "--figure",
      "balance",
      "--figure",
      "mass",
    );
    expect(status).toBe(0);
    expect(printed).toContain("tail from 60 mm to 100 mm; now 89.77 mm");
    expect(printed).toMatch(/^ {4}tail mm +Balance G +Mass kg$/m);
    expect(printed).toMatch(/^ {9}60 +9553\.1 +0\.61021 {2}█+$/m);
    expect(printed).not.toContain("✓");
    expect(printed).toContain("Spinning bars kill");
    const near = await call("--let", "tail from 89.77 mm to 95 mm", "--steps", "3");
    expect(near.printed).toMatch(/^ +✓ 89\.77 /m);
    expect(near.printed).toContain("✓ keeps the requirements of the file");
  });

  it("shows one figure over two lets, within 80 columns, as all its tables", async () => {
    const asked = ["--let", "tail", "--let", "lower", "--steps", "4,9", "--figure", "balance"];
    const { status, printed } = await call(...asked);
    expect(status).toBe(0);
    expect(printed).toContain("Balance G: tail down, lower across");
    const many = ["--figure", "mass", "--figure", "areaMm2", "--figure", "tip_speed", "--figure", "segments"];
    const wide = await call(
      "--let",
      "tail",
      ...many,
      "--figure",
      "energy",
      "--figure",
      "bite at 4 m/s",
      "--units",
      "in",
    );
    for (const line of [...printed.split("\n"), ...wide.printed.split("\n")])
      expect(line.length, line).toBeLessThanOrEqual(80);
  });

  it("writes comma-separated values, and no file twice", async () => {
    const { world, status, printed } = await call("--let", "tail", "--steps", "3", "--to", "out.csv");
    expect([status, printed]).toEqual([0, "out.csv written: 3 bars.\n"]);
    expect(world.files.get("out.csv")?.split("\r\n")).toHaveLength(5);
    expect(await world.run("study", "a.bar", "--let", "tail", "--to", "out.csv")).toBe(2);
    expect(await world.run("study", "a.bar", "--let", "tail", "--to", "out.csv", "--force")).toBe(0);
    expect(await world.run("study", "a.bar", "--let", "tail", "--to", "out.txt")).toBe(2);
  });

  it("prints one JSON object", async () => {
    const { printed } = await call("--let", "tail", "--steps", "2", "--figure", "massKg", "--json");
    const { rows } = JSON.parse(printed);
    expect(rows.map(({ values }: { values: number[] }) => values)).toEqual([[60], [100]]);
    expect(rows[0].figures.massKg).toBeCloseTo(0.6102, 4);
  });

  it("says what is wrong with the call", async () => {
    for (const words of [
      [],
      ["--let", "tale"],
      ["--let", "tail", "--steps", "x"],
      ["--let", "tail", "--figure", "mas"],
    ]) {
      const { status, complained, printed } = await call(...words);
      expect([status, printed], words.join(" ")).toEqual([2, ""]);
      expect(complained.split("\n")).toHaveLength(2);
    }
  });

  it("tells the errors of a file that no plate can be made of", async () => {
    const world = new MemoryWorld({
      "broken.bar": SAMPLE.replace("let waist = 24 mm", "let waist = 24"),
      "cut.bar": SAMPLE.replace("outline {", "outlin {"),
    });
    for (const file of ["broken.bar", "cut.bar"]) {
      world.complained = "";
      expect(await world.run("study", file, "--let", "tail")).toBe(1);
      expect(world.complained).toMatch(new RegExp(`^${file}:\\d+:\\d+ error `, "m"));
    }
  });
});
