import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../geometry/language/apply-edits.ts";
import { parse } from "../../geometry/language/parse.ts";
import { describeParse, readCases, type TextCase } from "./case-files.ts";

const folder = new URL("cases/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".txt"));

/** Those that reading the text reports, `too-many-problems` apart: that would be a case of 500 lines. */
const SYNTAX_CODES = [
  "bad-character",
  "bad-number",
  "unknown-word",
  "unexpected-text",
  "missing-part",
  "missing-brace",
  "misplaced-statement",
  "too-deep",
  "unknown-unit",
  "reserved-name",
];

function casesOf(name: string): readonly TextCase[] {
  return readCases(readFileSync(new URL(name, folder), "utf8"));
}

function codesOf(text: string): readonly string[] {
  return parse(text).problems.map((problem) => problem.code);
}

describe.each(files)("%s", (name) => {
  it.each(casesOf(name))("$title", ({ input, expected }) => {
    expect(expected, "the case has no expectation").not.toBeNull();
    expect(describeParse(input)).toBe(expected);
  });

  it.each(casesOf(name))("each fix mends its problem: $title", ({ input }) => {
    const { problems } = parse(input);
    for (const problem of problems) {
      const isSame = ({ code, message }: typeof problem): boolean =>
        code === problem.code && message === problem.message;
      for (const fix of problem.fixes) {
        const left = parse(applyEdits(input, fix.edits)).problems;
        expect(left.filter(isSame).length, fix.title).toBeLessThan(problems.filter(isSame).length);
      }
    }
  });
});

describe("case files", () => {
  it.each(SYNTAX_CODES)("show %s where it is reported and where it is not", (code) => {
    const reported = casesOf(`${code}.txt`).map(({ input }) => codesOf(input).includes(code));
    expect(reported).toContain(true);
    expect(reported).toContain(false);
  });

  it("show no other code", () => {
    const codes = files.flatMap(casesOf).flatMap(({ input }) => codesOf(input));
    expect(SYNTAX_CODES).toEqual(expect.arrayContaining([...new Set(codes)]));
  });

  it("without a case, or a case without an expectation, are refused", () => {
    expect(() => readCases("nothing here")).toThrow("no case");
    expect(readCases("=== a\nbore 22 mm\n")[0]?.expected).toBeNull();
    expect(readCases("=== a\nbore 22 mm\n==>\n\n")[0]?.expected).toBeNull();
  });
});
