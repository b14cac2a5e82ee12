import fc from "fast-check";
import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import { ANGLE, DENSITY, ENERGY, LENGTH, SPEED, sameDimension } from "../../geometry/language/dimension.ts";
import {
  namedUnit,
  numberOfUnit,
  quantityFromUnit,
  type UnitScale,
  unitFactor,
  unitFromText,
} from "../../geometry/language/units.ts";
import { UNIT_NAMES } from "../../geometry/language/vocabulary.ts";

const SEED = 20_240_611;

function scaleOf(text: string): UnitScale {
  const scale = unitFromText(text);
  if (scale === null) throw new Error(`${text} is no unit`);
  return scale;
}

function factorOf(text: string): number {
  return scaleOf(text).factor;
}

describe("units against their definitions", () => {
  // The international yard and pound agreement of 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg, both exactly.
  // Standard gravity: 9.80665 m/s² exactly (3rd CGPM, 1901). The rest follows from these and from the SI.
  const exact: readonly (readonly [unit: string, factor: number])[] = [
    ["um", 0.001],
    ["mm", 1],
    ["cm", 10],
    ["m", 1000],
    ["km", 1e6],
    ["thou", 0.0254],
    ["in", 25.4],
    ["ft", 304.8],
    ["mg", 1e-6],
    ["g", 0.001],
    ["kg", 1],
    ["t", 1000],
    ["oz", 0.028349523125],
    ["lb", 0.45359237],
    ["ms", 0.001],
    ["s", 1],
    ["min", 60],
    ["h", 3600],
    ["deg", Math.PI / 180],
    ["rad", 1],
    ["turn", 2 * Math.PI],
    ["rpm", (2 * Math.PI) / 60],
    ["mph", 447.04],
    ["N", 1000],
    ["kN", 1e6],
    ["lbf", 4448.2216152605],
    ["Pa", 0.001],
    ["kPa", 1],
    ["MPa", 1000],
    ["GPa", 1e6],
    ["J", 1e6],
    ["kJ", 1e9],
    ["Wh", 3.6e9],
    ["W", 1e6],
    ["kW", 1e9],
    ["V", 1e6],
    ["mV", 1000],
    ["A", 1],
    ["mA", 0.001],
    ["ohm", 1e6],
    ["mohm", 1000],
    ["Ah", 3600],
    ["mAh", 3.6],
  ];
  it.each(exact)("%s is %d to the last digit", (unit, factor) => {
    expect(factorOf(unit)).toBe(factor);
  });

  const quotients: readonly (readonly [unit: string, factor: number])[] = [
    ["psi", 4448.2216152605 / 25.4 ** 2],
    ["ksi", (1000 * 4448.2216152605) / 25.4 ** 2],
    ["hp", 550 * 304.8 * 4448.2216152605],
  ];
  it.each(quotients)("%s is %d to fifteen digits", (unit, factor) => {
    expect(Math.abs(factorOf(unit) / factor - 1)).toBeLessThan(1e-15);
  });

  it("covers every unit of the language", () => {
    const tested = [...exact, ...quotients].map(([unit]) => unit);
    expect(tested.sort()).toEqual([...UNIT_NAMES].sort());
  });
});

describe("units against mathjs as a whole", () => {
  const math = create(all ?? {}, {});
  const names: Record<string, string> = { thou: "mil", turn: "cycle", rpm: "cycle/minute", mph: "mile/hour" };
  const bases = { length: "mm", mass: "kg", time: "s", current: "A", angle: "rad" } as const;

  it.each(UNIT_NAMES)("%s has the kind and size that mathjs gives it", (name) => {
    const { factor, dimension } = scaleOf(name);
    const base = Object.entries(bases)
      .map(([kind, unit]) => `${unit}^${dimension[kind as keyof typeof bases]}`)
      .join(" ");
    const theirs =
      name === "ksi"
        ? math.unit("1000 psi")
        : name === "mohm"
          ? math.unit("0.001 ohm")
          : math.unit(names[name] ?? name);
    // mathjs writes psi and hp with eleven digits.
    expect(Math.abs(factor / theirs.toNumber(base) - 1)).toBeLessThan(1e-10);
  });
});

describe("composite units", () => {
  it("multiplies factors with their powers", () => {
    expect(scaleOf("kg/m^3")).toEqual({ factor: 1e-9, dimension: DENSITY });
    expect(scaleOf("m/s")).toEqual({ factor: 1000, dimension: SPEED });
    expect(factorOf("in^2")).toBe(645.16);
    expect(factorOf("s^-1")).toBe(1);
    expect(factorOf("N*m")).toBe(1e6);
  });
  it("drops radians beside lengths and masses, and nowhere else", () => {
    expect(sameDimension(scaleOf("m*rad/s").dimension, SPEED)).toBe(true);
    expect(sameDimension(scaleOf("kg*m^2*rad^2/s^2").dimension, ENERGY)).toBe(true);
    expect(sameDimension(scaleOf("rpm").dimension, scaleOf("s^-1").dimension)).toBe(false);
    expect(sameDimension(scaleOf("rpm").dimension, scaleOf("rad/s").dimension)).toBe(true);
    expect(sameDimension(scaleOf("rpm").dimension, scaleOf("turn/min").dimension)).toBe(true);
  });
  it("gives null for what is no unit", () => {
    for (const text of [
      "",
      "5",
      "xyz",
      "kg/",
      "/s",
      "m^",
      "m^1.5",
      "toString",
      "constructor",
      "__proto__",
      "1/s",
    ]) {
      expect(unitFromText(text), text).toBe(null);
    }
    expect(unitFactor({ factors: [{ name: "Mm", exponent: 1 }] })).toBe(null);
  });
});

describe("values in units", () => {
  it("keeps every digit that was written", () => {
    expect(quantityFromUnit(130, scaleOf("mm")).value).toBe(130);
    expect(quantityFromUnit(0.1, scaleOf("mm")).value).toBe(0.1);
    expect(quantityFromUnit(1, scaleOf("in")).value).toBe(25.4);
    expect(quantityFromUnit(0.3, scaleOf("in")).value).toBe(7.62);
    expect(quantityFromUnit(1.1, scaleOf("cm")).value).toBe(11);
    expect(quantityFromUnit(45, scaleOf("deg"))).toEqual({ value: Math.PI / 4, dimension: ANGLE });
  });
  it("gives whole and decimal rpm back as they were written", () => {
    const rpm = scaleOf("rpm");
    for (let n = 1; n <= 20_000; n++) expect(numberOfUnit(quantityFromUnit(n, rpm), rpm)).toBe(n);
    for (let n = 1; n <= 9_999; n++) expect(numberOfUnit(quantityFromUnit(n / 10, rpm), rpm)).toBe(n / 10);
  });
  it("comes back from any unit as it was written, for up to twelve digits", () => {
    const written = fc
      .tuple(fc.integer({ min: 1, max: 999_999_999_999 }), fc.integer({ min: 0, max: 12 }))
      .map(([digits, shift]) => Number(`${digits}e-${shift}`));
    fc.assert(
      fc.property(fc.constantFrom(...UNIT_NAMES), written, (name, value) => {
        const scale = scaleOf(name);
        expect(numberOfUnit(quantityFromUnit(value, scale), scale)).toBe(value);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });
  it("converts a length between inches and millimetres as the definition has it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (thousandths) => {
        const inches = thousandths / 1000;
        const exact = Number((BigInt(thousandths) * 254n).toString()) / 10_000;
        expect(quantityFromUnit(inches, scaleOf("in")).value).toBe(exact);
      }),
      { seed: SEED },
    );
  });
});

describe("names of units", () => {
  it("knows the names of the language and no others", () => {
    for (const name of UNIT_NAMES) expect(namedUnit(name)).not.toBe(null);
    for (const name of ["Mm", "MM", "inch", "kph", "degrees", "toString", "hasOwnProperty", ""]) {
      expect(namedUnit(name), name).toBe(null);
    }
    expect(sameDimension(scaleOf("thou").dimension, LENGTH)).toBe(true);
  });
});
