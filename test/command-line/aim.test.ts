import { describe, expect, it } from "vitest";
import { MemoryWorld } from "./memory-world.ts";

const PLATE = `bar "plate"
thickness 5 mm
density 7850 kg/m^3
let long = 300 mm from 200 mm to 400 mm
let wide = 50 mm from 30 mm to 60 mm
outline {
  from (-long / 2, -wide / 2)
  line (long / 2, -wide / 2)
  line (long / 2, wide / 2)
  line (-long / 2, wide / 2)
  close
}
bore 20 mm
`;
const AIM = "most inertia keeping mass <= 0.6 kg by long, wide";
const QUICK = ["--effort", "quick"];
const LINE = ["most inertia and least mass by long, wide", ...QUICK];

const world = (text = PLATE) => new MemoryWorld({ "a.bar": text });

function widest(text: string): number {
  return Math.max(...text.split("\n").map((line) => line.length));
}

describe("aim", () => {
  it("prints what would change, how it stands to the limits, and the cautions, in 80 columns", async () => {
    const called = world();
    expect(await called.run("aim", "a.bar", AIM, ...QUICK)).toBe(0);
    expect(called.printed).toMatch(
      /^aim most inertia keeping mass <= 0\.6 kg by long, wide\n\d+ bars measured, searched to the end\n/,
    );
    expect(called.printed).toMatch(/long +300 mm +400 mm +at its upper bound/);
    expect(called.printed).toMatch(/wide +50 mm +39 mm\n/);
    expect(called.printed).toMatch(/Mass +≤ 600 g +600 g +[\d.]+ g +holds it back/);
    expect(called.printed).toContain("Take care");
    expect(called.printed).toContain("Nothing was written; --write changes the file");
    expect(widest(called.printed)).toBeLessThanOrEqual(80);
    expect(called.files.get("a.bar")).toBe(PLATE);
  });

  it("changes the file with --write, and finds nothing better in it then", async () => {
    const called = world();
    expect(await called.run("aim", "a.bar", AIM, "--write", ...QUICK)).toBe(0);
    expect(called.files.get("a.bar")).toBe(
      PLATE.replace("let long = 300", "let long = 400").replace("let wide = 50", "let wide = 39"),
    );
    expect(called.printed).toContain("a.bar written.");
    const again = world(called.files.get("a.bar"));
    expect(await again.run("aim", "a.bar", AIM, "--write", ...QUICK)).toBe(0);
    expect(again.printed).toContain("The bar is the best of these as it is.");
  });

  it("takes the aim of the file, and adds the bar as a variant", async () => {
    const text = `${PLATE}aim ${AIM}\n`;
    const called = world(text);
    expect(await called.run("aim", "a.bar", "--as-variant", "stout", "--write", ...QUICK)).toBe(0);
    expect(called.files.get("a.bar")).toBe(
      `${text}\nvariant "stout" {\n  long = 400 mm\n  wide = 39 mm\n}\n`,
    );
    const shown = world(text);
    expect(await shown.run("aim", "a.bar", "--as-variant", "stout", ...QUICK)).toBe(0);
    expect(shown.printed).toContain('variant "stout" {\n  long = 400 mm\n');
    expect(shown.files.get("a.bar")).toBe(text);
    const taken = world(called.files.get("a.bar"));
    expect(await taken.run("aim", "a.bar", "--as-variant", "stout")).toBe(2);
    expect(taken.complained).toContain('has a variant "stout" already');
  });

  it("prints the line of two goals, and writes the one picked", async () => {
    const called = world();
    expect(await called.run("aim", "a.bar", ...LINE)).toBe(0);
    expect(called.printed).toMatch(/\n {2}1 .*400 mm +60 mm\n/);
    expect(called.printed).toMatch(/\n {2}9 .*200 mm +30 mm\n/);
    expect(called.printed).toMatch(/\n {2}now .*300 mm +50 mm\n/);
    expect(widest(called.printed)).toBeLessThanOrEqual(80);
    const undecided = world();
    expect(await undecided.run("aim", "a.bar", ...LINE, "--write")).toBe(2);
    expect(undecided.complained).toContain("say which to write, --pick N");
    const picked = world();
    expect(await picked.run("aim", "a.bar", ...LINE, "--pick", "9", "--write")).toBe(0);
    expect(picked.files.get("a.bar")).toContain("let long = 200 mm");
    const beyond = world();
    expect(await beyond.run("aim", "a.bar", ...LINE, "--pick", "10")).toBe(2);
  });

  it("tells what it found as JSON with stable keys", async () => {
    const called = world();
    expect(await called.run("aim", "a.bar", AIM, "--json", ...QUICK)).toBe(0);
    const told = JSON.parse(called.printed);
    expect(Object.keys(told)).toEqual([
      "file",
      "variant",
      "status",
      "reason",
      "message",
      "evaluations",
      "stopped",
      "bars",
      "written",
    ]);
    expect(told).toMatchObject({ file: "a.bar", status: "found", stopped: false, written: false });
    expect(told.bars[0].lets).toEqual([
      { name: "long", from: "300 mm", to: "400 mm", atBound: "most" },
      { name: "wide", from: "50 mm", to: "39 mm", atBound: null },
    ]);
    expect(told.bars[0].goals[0]).toMatchObject({
      sense: "most",
      figure: "inertia",
      key: "inertiaKgM2",
      atMPerS: null,
    });
    expect(told.bars[0].limits[0]).toMatchObject({
      origin: "aim",
      figure: "mass",
      key: "massKg",
      relation: "<=",
      limit: 0.6,
      holds: true,
      reached: true,
    });
  });

  it("says what cannot be reached, with the nearest bar, and writes nothing", async () => {
    const called = world();
    expect(
      await called.run(
        "aim",
        "a.bar",
        "least mass keeping inertia >= 1 kg*m^2 by long, wide",
        "--write",
        ...QUICK,
      ),
    ).toBe(1);
    expect(called.complained).toMatch(
      /No values within the bounds keep all limits\. The nearest is long = 400 mm, wide = 60 mm: Moment of inertia is/,
    );
    expect(called.printed).toContain("NOT KEPT");
    expect(called.files.get("a.bar")).toBe(PLATE);
  });

  it("tells how far it is, and keeps the best so far when stopped", async () => {
    const called = world();
    called.stopAtBreath = 1;
    const outcome = await called.run(
      "aim",
      "a.bar",
      "most inertia and least mass by long, wide",
      "--effort",
      "thorough",
      "--json",
    );
    expect(outcome).toBe(0);
    expect(called.told[0]).toMatch(/^\d+ of at most \d+ bars.* \(Ctrl-C stops and keeps the best so far\)$/);
    expect(called.told.at(-1)).toBe("");
    expect(JSON.parse(called.printed)).toMatchObject({ status: "found", stopped: true });
  });

  it("leaves other variants whole: what would break one is not written into the lets", async () => {
    const text = `${PLATE}require max_radius <= 205 mm\nvariant "wide one" { wide = 120 mm }\n`;
    const called = world(text);
    expect(await called.run("aim", "a.bar", "most inertia by long", "--write", ...QUICK)).toBe(2);
    expect(called.complained).toContain("--as-variant NAME leaves the others as they are");
    expect(called.files.get("a.bar")).toBe(text);
  });

  it.each([
    [["aim"], "Name the outline file."],
    [["aim", "a.bar", "most", "inertia"], 'put it in quotation marks ("most inertia")'],
    [["aim", "a.bar"], "has no valid line 'aim'"],
    [["aim", "a.bar", "most inertia by lng"], "did you mean long?"],
    [["aim", "a.bar", AIM, "--effort", "much"], "--effort is quick or usual or thorough"],
    [["aim", "a.bar", AIM, "--seed", "x"], "--seed is a whole number"],
    [["aim", "a.bar", AIM, "--as-variant", 'a"b'], "without quotation marks"],
    [["aim", "a.bar", AIM, "--variant", "none"], 'has no variant "none"'],
  ])("refuses %j", async (argv, message) => {
    const called = world();
    expect(await called.run(...argv)).toBe(2);
    expect(called.complained).toContain(message);
  });

  it("tells of a file with errors", async () => {
    const called = world(PLATE.replace("bore 20 mm", "bore 20 mmm"));
    expect(await called.run("aim", "a.bar", AIM)).toBe(1);
    expect(called.complained).toContain("Mend the file's errors first");
  });
});
