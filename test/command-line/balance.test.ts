import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MemoryWorld } from "./memory-world.ts";

const SAMPLE = readFileSync(join(import.meta.dirname, "../../samples/brass-limpet-one-tooth.bar"), "utf8");
const OFF = SAMPLE.replace("let tail = 89.77 mm", "let tail = 70 mm");
const BY = ["--by", "tail,lower"];

function world(text = OFF) {
  return new MemoryWorld({ "a.bar": text });
}

describe("balance", () => {
  it("prints what it found and where, and leaves the file alone", async () => {
    const called = world();
    expect(await called.run("balance", "a.bar", ...BY)).toBe(0);
    expect(called.printed).toMatch(/^a\.bar: from G\d+, .+ g·mm, .+ to G0\.\d+, /);
    expect(called.printed).toMatch(/^a\.bar:12:12 tail = 70 mm → 89\.\d+ mm$/m);
    expect(called.printed).toContain("--write changes the file");
    expect(called.files.get("a.bar")).toBe(OFF);
  });

  it("writes the file when told to, after which there is nothing to do", async () => {
    const called = world();
    expect(await called.run("balance", "a.bar", ...BY, "--write")).toBe(0);
    const written = called.files.get("a.bar") ?? "";
    expect(written).not.toBe(OFF);
    expect(written.replace(/[\d.]+ mm from/g, "")).toBe(OFF.replace(/[\d.]+ mm from/g, ""));
    expect(called.printed).toContain("a.bar written.");
    const again = world(written);
    expect(await again.run("check", "a.bar")).toBe(0);
    expect(await again.run("balance", "a.bar", ...BY, "--write")).toBe(0);
    expect(again.printed).toContain("a.bar: balanced already: G0.");
    expect(again.files.get("a.bar")).toBe(written);
  });

  it("tells all of it as JSON", async () => {
    const called = world();
    expect(await called.run("balance", "a.bar", ...BY, "--json", "--write")).toBe(0);
    const json = JSON.parse(called.printed);
    expect(Object.keys(json)).toEqual([
      "file",
      "variant",
      "solved",
      "reason",
      "message",
      "before",
      "after",
      "lets",
      "written",
    ]);
    expect(json).toMatchObject({ file: "a.bar", variant: null, solved: true, reason: null, written: true });
    expect(json.after.balanceGrade).toBeLessThan(6.3);
    const [tail] = json.lets;
    expect(tail).toMatchObject({ name: "tail", from: "70 mm", edit: { line: 12, column: 12 } });
    expect(OFF.slice(tail.edit.start, tail.edit.end)).toBe("70");
    expect(called.files.get("a.bar")).toContain(`let tail = ${tail.edit.newText} mm from`);
  });

  it("balances a variant in itself", async () => {
    const called = world(`${SAMPLE}variant "long" { reach = 130 mm }\n`);
    expect(await called.run("balance", "a.bar", ...BY, "--variant", "long", "--write")).toBe(0);
    expect(called.files.get("a.bar")).toMatch(
      /variant "long" \{ tail = .+ mm lower = .+ mm reach = 130 mm \}\n$/,
    );
    expect(called.files.get("a.bar")).toContain("let tail = 89.77 mm");
  });

  it("says why not with status 1, and writes nothing", async () => {
    const short = OFF.replace("70 mm from 60 mm to 100 mm", "70 mm from 60 mm to 80 mm");
    const called = world(short);
    expect(await called.run("balance", "a.bar", "--by", "tail", "--write")).toBe(1);
    expect(called.complained).toMatch(
      /^a\.bar: not balanced: tail can bring the bar from G.+ 'tail' is at its bound of 80 mm\.\n$/,
    );
    expect(called.files.get("a.bar")).toBe(short);
    const json = world(short);
    expect(await json.run("balance", "a.bar", "--by", "tail", "--json")).toBe(1);
    expect(JSON.parse(json.printed)).toMatchObject({
      solved: false,
      reason: "out-of-reach",
      lets: [{ to: "80 mm" }],
    });
  });

  it("has status 1 where the balanced bar fails something else", async () => {
    const called = world(OFF.replace("require mass <= 1.2 kg", "require mass <= 0.6 kg"));
    expect(await called.run("balance", "a.bar", ...BY)).toBe(1);
    expect(called.complained).toContain("mass-over-class");
  });

  it("takes the lets that the file names, unless told others", async () => {
    const called = world();
    expect(await called.run("balance", "a.bar")).toBe(0);
    expect(called.printed).toMatch(/tail = 70 mm → [\d.]+ mm$/m);
    const other = world();
    expect(await other.run("balance", "a.bar", "--by", "tail,upper")).toBe(0);
    expect(other.printed).not.toContain("lower");
    const nameless = world(OFF.replace(/^balance .*\n/m, ""));
    expect(await nameless.run("balance", "a.bar")).toBe(2);
    expect(nameless.complained).toContain("--by NAME");
  });

  it.each([
    [["balance"]],
    [["balance", "a.bar", "--by"]],
    [["balance", "a.bar", "--by", "tail,lower,waist"]],
    [["balance", "a.bar", "--by", "tial"]],
    [["balance", "a.bar", "--by", ""]],
    [["balance", "a.bar", "--by", "tail", "--variant", "none"]],
    [["balance", "a.bar", "b.bar", "--by", "tail"]],
    [["balance", "none.bar", "--by", "tail"]],
  ])("refuses %j with status 2 and one reason", async (argv) => {
    const called = world();
    expect(await called.run(...argv)).toBe(2);
    expect(called.complained).toMatch(/^barwright: .+\n$/);
    expect(called.printed).toBe("");
  });
});
