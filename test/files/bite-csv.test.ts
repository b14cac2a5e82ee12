import { describe, expect, it } from "vitest";
import { toBiteCsv } from "../../geometry/files/bite-csv.ts";

const point = { closingMPerS: 0.5, maxMm: 3.25, meanMm: 1.5, squareShare: 1, idealMm: 3.25 };

describe("the bite table", () => {
  it("has a header, CRLF after each record, the last one too, and plain decimals", () => {
    const curve = [point, { ...point, closingMPerS: 0.1 + 0.2, squareShare: 2 / 3, maxMm: 1e-7, meanMm: 0 }];
    expect(toBiteCsv(curve)).toBe(
      [
        "closing_m_per_s,max_mm,mean_mm,square_share,ideal_mm",
        "0.5,3.25,1.5,1,3.25",
        "0.3,0.0000001,0,0.666666667,3.25",
        "",
      ].join("\r\n"),
    );
  });

  it("leaves an unknown value empty, never 0", () => {
    expect(toBiteCsv([{ ...point, idealMm: null }]).split("\r\n")[1]).toBe("0.5,3.25,1.5,1,");
  });

  it("of no speeds is the header alone", () => {
    expect(toBiteCsv([])).toBe("closing_m_per_s,max_mm,mean_mm,square_share,ideal_mm\r\n");
  });

  it("refuses numbers that are not finite", () => {
    expect(() => toBiteCsv([{ ...point, meanMm: Number.NaN }])).toThrow(RangeError);
  });
});
