import { describe, expect, it } from "vitest";
import { analyse } from "../../geometry/analysis/analyse.ts";
import { readSource } from "../../geometry/analysis/source.ts";
import { toCompareCsv } from "../../geometry/files/compare-csv.ts";
import { toCsv } from "../../geometry/files/csv.ts";
import { compare } from "../../geometry/study/compare/compare.ts";
import { SAMPLES } from "../samples/samples.ts";

describe("a comparison as comma-separated values", () => {
  const source = readSource(SAMPLES.find(({ file }) => file.startsWith("pickled"))?.text ?? "");
  const bars = [null, "long reach"].map((variant) => ({
    file: "a.bar",
    analysis: analyse(source, { variant }),
  }));
  const text = toCompareCsv(compare(bars), ["as written", '=SUM(1,2) "long"']);
  const records = text.split("\r\n");

  it("has a column for each value, difference and share, and names no formula", () => {
    expect(records[0]).toBe(
      'figure,value: as written,"value: =SUM(1,2) ""long""","difference: =SUM(1,2) ""long""","percent: =SUM(1,2) ""long"""',
    );
    for (const record of records) expect(record).not.toMatch(/^[=+@-]/);
  });

  it("has a record for each number of each figure", () => {
    const names = records.slice(1, -1).map((record) => record.split(",")[0]);
    expect(names).toContain("massKg");
    expect(names.filter((name) => name?.startsWith("boundsMm"))).toHaveLength(4);
    expect(names.filter((name) => name?.startsWith("permissibleGMm"))).toEqual([
      "permissibleGMm.G6.3",
      "permissibleGMm.G16",
      "permissibleGMm.G40",
    ]);
    const mass =
      records
        .find((record) => record.startsWith("massKg,"))
        ?.split(",")
        .map(Number) ?? [];
    const [, one = 0, other = 0, difference, percent] = mass;
    expect(difference).toBeCloseTo(other - one, 8);
    expect(percent).toBeCloseTo((100 * (other - one)) / one, 6);
  });

  it("leaves what is not known empty, and keeps words", () => {
    expect(records).toContain("imbalanceDeg,,,,");
    expect(records.find((record) => record.startsWith("direction,"))).toBe("direction,ccw,ccw,,");
  });
});

// RFC 4180, section 2, 5 to 7: fields with line breaks, quotes and commas are enclosed in quotes, quotes doubled.
it("quotes texts by RFC 4180", () => {
  expect(
    toCsv(
      ["a", "b,c"],
      [
        ["x\ny", 'say "so"'],
        [1.5, null],
      ],
    ),
  ).toBe('a,"b,c"\r\n"x\ny","say ""so"""\r\n1.5,\r\n');
});
