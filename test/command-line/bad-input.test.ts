/** Texts that nobody means well with: each gets a clear problem, whatever it holds, and the right exit status. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MOST_CHARACTERS } from "../../geometry/analysis/source.ts";
import { MemoryWorld } from "./memory-world.ts";

const GOOD = readFileSync(join(import.meta.dirname, "../../samples/quiet-kettle-disc.bar"), "utf8");
const FIVE_MB = 5_000_000;

/** A frame around one path, so that what is wrong stands alone. */
function bar(path: string, rest = "bore 2 mm\n"): string {
  return `bar "x"\nthickness 2 mm\nmaterial pla\noutline {\n${path}\n}\n${rest}`;
}

const BAD: readonly (readonly [name: string, text: string, code: string])[] = [
  ["five megabytes of steps", "line (1 mm, 2 mm)\n".repeat(FIVE_MB / 18), "too-long"],
  ["five megabytes of one word", "a".repeat(FIVE_MB), "too-long"],
  ["five megabytes of noise", noise(FIVE_MB), "too-long"],
  ["deep parentheses", `let a = ${"(".repeat(100_000)}1${")".repeat(100_000)}`, "too-deep"],
  ["a tower of powers", `let a = ${"2^".repeat(100_000)}2`, "too-deep"],
  ["a number too large", "let a = 1e999", "bad-number"],
  [
    "a length of 1e308",
    bar("from (1e308 mm, 0 mm) line (0 mm, 1e308 mm) line (-1 mm, 0 mm) close"),
    "out-of-range",
  ],
  ["zero by zero", "let a = 0 / 0", "not-finite"],
  ["the root of a negative", "let a = sqrt(-1)", "bad-argument"],
  ["a product without end", "let a = 1e308 * 1e308", "not-finite"],
  [
    "an arc of no radius",
    bar("from (10 mm, 0 mm) arc (-10 mm, 0 mm) radius 0 mm turning left close"),
    "out-of-range",
  ],
  ["nul bytes", 'bar "x"\u0000\nthickness 5\u0000 mm\n', "bad-character"],
  [
    "a cycle of lets",
    Array.from({ length: 1000 }, (_, i) => `let a${i} = a${(i + 1) % 1000}`).join("\n"),
    "cycle",
  ],
  [
    "a billion repeats",
    bar("from (10 mm, 0 mm) line (10 mm @ 1 deg)").replace("outline", "outline repeat 1e9"),
    "out-of-range",
  ],
  ["nothing", "", "missing-outline"],
];

describe("bad input", () => {
  it.each(BAD)("%s", async (_, text, code) => {
    const world = new MemoryWorld({ "a.bar": text });
    expect(await world.run("check", "a.bar", "--json")).toBe(1);
    const [{ problems }] = JSON.parse(world.printed);
    expect(problems.map((problem: { code: string }) => problem.code)).toContain(code);
    expect(problems.length).toBeLessThan(600);
    for (const { line, column, message } of problems) {
      expect(Math.min(line, column)).toBeGreaterThan(0);
      expect(message).not.toMatch(/undefined|NaN|\[object/);
    }
  });

  it.each([
    ["CRLF", GOOD.replaceAll("\n", "\r\n")],
    ["CR", GOOD.replaceAll("\n", "\r")],
    ["a byte order mark", `\ufeff${GOOD}`],
  ])("%s is no trouble: the same numbers", async (_, text) => {
    const [plain, other] = [new MemoryWorld({ "a.bar": GOOD }), new MemoryWorld({ "a.bar": text })];
    expect(await plain.run("report", "a.bar", "--json")).toBe(0);
    expect(await other.run("report", "a.bar", "--json")).toBe(0);
    expect(other.printed).toBe(plain.printed);
  });

  it("is read to the last character that fits", () => {
    expect(MOST_CHARACTERS).toBeGreaterThan(20 * GOOD.length);
  });
});

/** Bytes of every value, the same each time. */
function noise(length: number): string {
  let state = 12345;
  let text = "";
  while (text.length < length) {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    text += String.fromCharCode((state >> 8) % 256).repeat(1 + (state % 3));
  }
  return text;
}
