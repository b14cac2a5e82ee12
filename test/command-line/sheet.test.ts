import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MemoryWorld } from "./memory-world.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "../../samples/brass-limpet-one-tooth.bar"), "utf8");

function world(text = SAMPLE) {
  return new MemoryWorld({ "a.bar": text });
}

describe("sheet", () => {
  it("prints the page, or writes it and never over a file unasked", async () => {
    const called = world();
    expect(await called.run("sheet", "a.bar")).toBe(0);
    expect(called.printed).toMatch(/^# Test-day sheet: /);
    const writing = world();
    expect(await writing.run("sheet", "a.bar", "--to", "day.md")).toBe(0);
    expect(writing.files.get("day.md")).toBe(called.printed);
    expect(writing.printed).toBe("day.md written.\n");
    expect(await writing.run("sheet", "a.bar", "--to", "day.md")).toBe(2);
    expect(await writing.run("sheet", "a.bar", "--to", "day.md", "--force")).toBe(0);
  });

  it("tells the errors of the file beside the page", async () => {
    const called = world(`${SAMPLE}\nevent { energy <= 1 J }\n`);
    expect(await called.run("sheet", "a.bar")).toBe(1);
    expect(called.printed).toContain("NOT MET");
    expect(called.complained).toContain("error require-failed Energy (event)");
  });

  it("refuses another ending", async () => {
    const called = world();
    expect(await called.run("sheet", "a.bar", "--to", "day.txt")).toBe(2);
    expect(called.complained).toContain("the ending must be .md");
  });
});

describe("report", () => {
  const FIGHT = `${SAMPLE}
budget {
  limit 6 kg
  part "frame and side plates with all of the screws" 2.1 kg
  part "wheel" 120 g count 4
  part "flag" 130 g spare
  scale 5.87 kg
}
event { tip_speed <= 175 m/s spin_down <= 60 s measured_spin_down 42 s }
`;

  it("has the budget part by part and the limits of the event, within 80 columns", async () => {
    const called = world(FIGHT);
    expect(await called.run("report", "a.bar")).toBe(0);
    expect(called.printed).toContain("Weight budget");
    expect(called.printed).toMatch(/^ {2}the bar, by its outline +1 /m);
    expect(called.printed).toMatch(/^ {2}wheel +4 +120 g +480 g +[\d.]+ %$/m);
    expect(called.printed).toMatch(/^ {2}flag +130 g +[\d.]+ k?g to spare$/m);
    expect(called.printed).toMatch(/^ {2}Spin-down \(event\) +42 s +at most 60 s +met$/m);
    expect(called.printed.split("\n").filter((line) => [...line].length > 80)).toEqual([]);
  });

  it("says nothing of either where the file does not", async () => {
    const called = world();
    expect(await called.run("report", "a.bar")).toBe(0);
    expect(called.printed).not.toMatch(/budget|event\)|Weight,/);
  });

  it("leaves the cut file and the balance to the builder where the robot is too heavy", async () => {
    const called = world(FIGHT.replace("limit 6 kg", "limit 3 kg"));
    expect(await called.run("report", "a.bar")).toBe(1);
    expect(called.printed).toContain("error budget-over-limit");
    expect(await called.run("export", "a.bar", "--to", "out.dxf")).toBe(1);
    expect(called.files.get("out.dxf")).toContain("LWPOLYLINE");
    await called.run("balance", "a.bar", "--by", "tail,lower");
    expect(called.printed).toContain("a.bar: balanced already");
  });

  it("has both in the page to print", async () => {
    const called = world(FIGHT);
    expect(await called.run("export", "a.bar", "--to", "out.md")).toBe(0);
    const page = called.files.get("out.md") ?? "";
    expect(page).toContain("## Weight, part by part");
    expect(page).toMatch(/^\| wheel \| 4 \| 120 g \| 480 g \| [\d.]+ % \|$/m);
    expect(page).toMatch(/^\| Tip speed \(event\) \|/m);
  });
});
