import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { format } from "../../geometry/language/format.ts";
import { readCases } from "./case-files.ts";

const folder = new URL("format-cases/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".txt"));

describe.each(files)("%s", (name) => {
  const cases = readCases(readFileSync(new URL(name, folder), "utf8"));

  it.each(cases)("$title", ({ input, expected }) => {
    expect(expected, "the case has no expectation").not.toBeNull();
    expect(format(input).trim()).toBe(expected);
  });
});

describe("format", () => {
  it("ends lines with LF and the file with one", () => {
    expect(format("bore 22 mm\r\nthickness 12 mm\rspin 3 rpm cw")).toBe(
      "bore 22 mm\nthickness 12 mm\nspin 3 rpm cw\n",
    );
  });

  it("leaves nothing of a file of blanks", () => {
    expect(format("")).toBe("");
    expect(format(" \t\r\n\n  ")).toBe("");
  });

  it("keeps a byte-order mark at the start and drops blanks of other kinds", () => {
    expect(format("\ufeffbore\u00a022 mm\u2003\n")).toBe("\ufeffbore 22 mm\n");
  });

  it("keeps blanks at the end of a comment, which are part of it, and drops others", () => {
    expect(format("bore 22 mm  # c  \nthickness 3 mm  \n")).toBe("bore 22 mm  # c  \nthickness 3 mm\n");
  });
});
