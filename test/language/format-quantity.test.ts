import { describe, expect, it } from "vitest";
import {
  ANGLE,
  ANGULAR_SPEED,
  DENSITY,
  dimension,
  ENERGY,
  FREQUENCY,
  IMBALANCE,
  LENGTH,
  MASS,
  NUMBER,
  RESISTANCE,
  SPEED,
  sameDimension,
  TIME,
} from "../../geometry/language/dimension.ts";
import { evaluate } from "../../geometry/language/evaluate.ts";
import { formatQuantity } from "../../geometry/language/format-quantity.ts";
import { parse } from "../../geometry/language/parse.ts";
import { dimensionName, expectedPhrase, quantityKind } from "../../geometry/language/quantity-kinds.ts";

describe("formatQuantity", () => {
  it.each([
    [{ value: 0.1 + 0.2, dimension: LENGTH }, undefined, "0.3 mm"],
    [{ value: 25.4, dimension: LENGTH }, "in", "1 in"],
    [{ value: 25.4, dimension: LENGTH }, "kg", "25.4 mm"],
    [{ value: 25.4, dimension: LENGTH }, null, "25.4 mm"],
    [{ value: Math.PI / 4, dimension: ANGLE }, undefined, "45 deg"],
    [{ value: (4200 * 2 * Math.PI) / 60, dimension: ANGULAR_SPEED }, undefined, "4200 rpm"],
    [{ value: 1.6, dimension: MASS }, undefined, "1.6 kg"],
    [{ value: 0.085, dimension: MASS }, undefined, "85 g"],
    [{ value: 0, dimension: MASS }, undefined, "0 kg"],
    [{ value: 3000, dimension: SPEED }, undefined, "3 m/s"],
    [{ value: 40, dimension: SPEED }, "mm/s", "40 mm/s"],
    [{ value: 7.85e-6, dimension: DENSITY }, undefined, "7850 kg/m^3"],
    [{ value: 9e8, dimension: ENERGY }, undefined, "900 J"],
    [{ value: 0.12, dimension: IMBALANCE }, undefined, "120 g*mm"],
    [{ value: 40_000, dimension: RESISTANCE }, undefined, "40 mohm"],
    [{ value: 0.02, dimension: TIME }, undefined, "20 ms"],
    [{ value: 12, dimension: FREQUENCY }, undefined, "12 1/s"],
    [{ value: 4, dimension: NUMBER }, undefined, "4"],
    [{ value: 2, dimension: dimension({ length: 0.5, time: -2 }) }, undefined, "2 mm^0.5/s^2"],
  ])("%o in %s is %s", (value, unit, text) => {
    expect(formatQuantity(value, unit)).toBe(text);
  });
});

describe("names of kinds", () => {
  it("come with their article and an example", () => {
    expect(dimensionName(LENGTH)).toBe("a length");
    expect(dimensionName(ANGLE)).toBe("an angle");
    expect(dimensionName(SPEED)).toBe("a speed");
    expect(dimensionName(dimension({ length: -1 }))).toBe("a value in 1/mm");
    expect(expectedPhrase(LENGTH)).toBe("a length such as 12 mm");
    expect(expectedPhrase(ANGLE)).toBe("an angle such as 45 deg");
    expect(expectedPhrase(SPEED)).toBe("a speed such as 3 m/s");
  });
  it("give examples that are values of the kind", () => {
    const texts = [
      "12 mm",
      "45 deg",
      "3 m/s",
      "4200 rpm",
      "1.6 kg",
      "50 mm^2",
      "800 mm^3",
      "7850 kg/m^3",
      "1200 MPa",
    ];
    texts.push(
      "900 J",
      "250 W",
      "80 N",
      "4 s",
      "9.81 m/s^2",
      "0.02 kg*m^2",
      "8 kg*m^2/s",
      "120 g*mm",
      "1/(2 s)",
    );
    texts.push("22.2 V", "60 A", "40 mohm", "3.3 Ah", "4");
    for (const text of texts) {
      const { tree, problems } = parse(`let a = ${text}\n`);
      expect(problems).toEqual([]);
      const value = evaluate(tree, { variant: null, figures: [] }).design.lets[0]?.value;
      if (!value) throw new Error(`${text} has no value`);
      const kind = quantityKind(value.dimension);
      expect(kind.example).toBe(text);
      expect(sameDimension(kind.dimension, value.dimension)).toBe(true);
    }
  });
});
