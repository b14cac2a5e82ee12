import { describe, expect, it } from "vitest";
import { ANGLE, LENGTH } from "../../../geometry/language/dimension.ts";
import { quantityOfText } from "../../../geometry/language/quantity-text.ts";
import { measuredOfText } from "../../../geometry/study/drilling/measured.ts";
import { expectClose } from "../../support/close-to.ts";

describe("what a balancing stand says", () => {
  it.each([
    ["2.4 g at 110 mm, 35 deg", 264, 35],
    ["0.0024 kg at 11 cm, 395 deg", 264, 35],
    ["264 g*mm at -325 deg", 264, 35],
    // An ounce is 28.349523125 g by definition of the pound.
    ["(1/16) lb at 1 in, 180 deg", 28.349523125 * 25.4, 180],
    ["2 g at (100 mm + 10 mm), (pi) rad", 220, 180],
  ])("reads %s", (text, imbalanceGMm, angleDeg) => {
    const read = measuredOfText(text);
    if (!read.ok) throw new Error(read.message);
    expectClose(read.heavySpot.imbalanceGMm, imbalanceGMm, 1e-12);
    expectClose(read.heavySpot.angleDeg ?? -1, angleDeg, 1e-9);
  });

  it.each([
    "2.4 g",
    "2.4 mm at 110 mm, 35 deg",
    "2.4 g at 110, 35 deg",
    "2.4 g at 110 mm, 35",
    "2.4 g at 110 mm at 3 mm, 35 deg",
    "-2 g at 110 mm, 35 deg",
    "2.4 g at 110 mm, 35 deg # note",
    "1/0 * 1 g at 110 mm, 35 deg",
    "",
  ])("refuses %s and says what was expected", (text) => {
    const read = measuredOfText(text);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.message.length).toBeGreaterThan(20);
  });
});

describe("a value that stands alone", () => {
  it("is read as a file reads it, and checked for its kind", () => {
    expect(quantityOfText("4.5 in / 2", LENGTH)).toMatchObject({ ok: true, quantity: { value: 57.15 } });
    expect(quantityOfText("12", LENGTH)).toMatchObject({ ok: false });
    expect(quantityOfText("12 mm from 1 mm to 20 mm", LENGTH)).toMatchObject({ ok: false });
    expect(quantityOfText("12 mm\nbar", LENGTH)).toMatchObject({ ok: false });
    expect(quantityOfText("reach", LENGTH)).toMatchObject({ ok: false });
    expect(quantityOfText("12 mm", ANGLE)).toMatchObject({
      ok: false,
      message: expect.stringContaining("an angle"),
    });
  });
});
