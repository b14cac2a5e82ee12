import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cleanFileName, cutFileName } from "../../geometry/files/file-name.ts";
import { printableAscii } from "../../geometry/files/printable-ascii.ts";

const SEED = 20_260_102;
const anyText = fc.string({ unit: "binary" });

describe("a name in printable ASCII", () => {
  it.each([
    ["Wattlebird one-tooth", "Wattlebird one-tooth"],
    ["Grünspecht Größe 2", "Grunspecht Grosse 2"],
    ["Œuf à la coque", "Oeuf a la coque"],
    ["Łoś — 3½ mm × 2", "Los - 31/2 mm x 2"],
    ["Жар-птица", "Zhar-ptitsa"],
    ["Φοίνιξ", "Foinix"],
    ["fish – “fast”", 'fish - "fast"'],
    ["two\tlines\nhere", "two lines here"],
    ["旋風 2", "2"],
  ])("%s becomes %s", (name, ascii) => {
    expect(printableAscii(name, "bar")).toBe(ascii);
  });

  it.each(["", "   ", "旋風", "カワセミ", "😀", "\u0000\u0007", "!?", "\ud800"])(
    "%j, of which no letter or digit is left, becomes the fallback",
    (name) => {
      expect(printableAscii(name, "bar")).toBe("bar");
    },
  );

  it("is printable, trimmed and not empty whatever the name", () => {
    fc.assert(
      fc.property(anyText, (name) => {
        expect(printableAscii(name, "bar")).toMatch(/^[!-~]([ -~]*[!-~])?$/);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });
});

describe("a file name", () => {
  it.each([
    ["Wattlebird one-tooth", "wattlebird-one-tooth"],
    ["Wattlebird - long tail", "wattlebird-long-tail"],
    ["../../etc/passwd", "etc-passwd"],
    ["C:\\bars\\*.bar", "c-bars-bar"],
    ["builder's best.", "builders-best"],
    ["COM1", "bar-com1"],
    ["nul", "bar-nul"],
    ["旋風", "bar"],
    ["", "bar"],
    [
      `${"long ".repeat(12)} name that goes on`,
      "long-long-long-long-long-long-long-long-long-long-long-long-name",
    ],
  ])("of %s is %s", (name, file) => {
    expect(cleanFileName(name)).toBe(file);
  });

  it("is portable whatever the name", () => {
    fc.assert(
      fc.property(anyText, (name) => {
        const file = cleanFileName(name);
        expect(file).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
        expect(file.length).toBeLessThanOrEqual(68);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it("of a cut file tells the unit where the reader might take another", () => {
    const of = (release: "2000" | "r12", units: "mm" | "in") =>
      cutFileName("Wattlebird one-tooth", { release, units });
    expect(of("2000", "mm")).toBe("wattlebird-one-tooth.dxf");
    expect(of("2000", "in")).toBe("wattlebird-one-tooth-in.dxf");
    expect(of("r12", "mm")).toBe("wattlebird-one-tooth-mm.dxf");
    expect(of("r12", "in")).toBe("wattlebird-one-tooth-in.dxf");
  });
});
