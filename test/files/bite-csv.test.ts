import { describe, expect, it } from "vitest";
import { toBiteCsv } from "../../geometry/files/bite-csv.ts";

const point = {
  ...{ closingMPerS: 0.5, maxMm: 3.25, meanMm: 1.5, squareShare: 1, idealMm: 3.25 },
  ...{
    minMm: 0,
    tenthMm: 0.25,
    medianMm: 1.25,
    ninetiethMm: 3,
    cleanShare: 1,
    toothShare: 1,
    passedShare: 0,
  },
  strikes: [{ place: { kind: "segment" as const, index: 4 }, share: 1 }],
};

const HEADER =
  "closing_m_per_s,max_mm,mean_mm,square_share,ideal_mm,min_mm,tenth_mm,median_mm,ninetieth_mm," +
  "clean_share,tooth_share,passed_share";

describe("the bite table", () => {
  it("has a header, CRLF after each record, the last one too, and plain decimals", () => {
    const curve = [point, { ...point, closingMPerS: 0.1 + 0.2, squareShare: 2 / 3, maxMm: 1e-7, meanMm: 0 }];
    expect(toBiteCsv(curve)).toBe(
      [
        `${HEADER},share_segment_4`,
        "0.5,3.25,1.5,1,3.25,0,0.25,1.25,3,1,1,0,1",
        "0.3,0.0000001,0,0.666666667,3.25,0,0.25,1.25,3,1,1,0,1",
        "",
      ].join("\r\n"),
    );
  });

  it("leaves an unknown value empty, never 0", () => {
    expect(toBiteCsv([{ ...point, idealMm: null }]).split("\r\n")[1]).toBe(
      "0.5,3.25,1.5,1,,0,0.25,1.25,3,1,1,0,1",
    );
  });

  it("has a column for each place that is struck at any speed, in the order of the outline", () => {
    const strikes = [
      { place: { kind: "corner" as const, index: 1 }, share: 0.25 },
      { place: { kind: "segment" as const, index: 2 }, share: 0.75 },
    ];
    const [head, first, second] = toBiteCsv([point, { ...point, strikes }]).split("\r\n");
    expect(head).toBe(`${HEADER},share_corner_1,share_segment_2,share_segment_4`);
    expect(first?.endsWith(",0,0,1")).toBe(true);
    expect(second?.endsWith(",0.25,0.75,0")).toBe(true);
  });

  it("of no speeds is the header alone", () => {
    expect(toBiteCsv([])).toBe(`${HEADER}\r\n`);
  });

  it("refuses numbers that are not finite", () => {
    expect(() => toBiteCsv([{ ...point, meanMm: Number.NaN }])).toThrow(RangeError);
  });
});
