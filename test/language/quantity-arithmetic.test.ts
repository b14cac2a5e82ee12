import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  ANGLE,
  ANGULAR_SPEED,
  dimension,
  ENERGY,
  INERTIA,
  LENGTH,
  MASS,
  NUMBER,
  SPEED,
  sameDimension,
  settle,
  TIME,
} from "../../geometry/language/dimension.ts";
import type { Quantity } from "../../geometry/language/quantity.ts";
import {
  add,
  divide,
  multiply,
  negate,
  power,
  quantity,
  settled,
  squareRoot,
  subtract,
} from "../../geometry/language/quantity-arithmetic.ts";

const SEED = 4242;
const exponents = fc.integer({ min: -3, max: 3 });
const dimensions = fc
  .record({ length: exponents, mass: exponents, time: exponents, current: exponents, angle: exponents })
  .map(dimension);
const values = fc.double({ noNaN: true, min: 1e-3, max: 1e3 });
const quantities = fc.record({ value: values, dimension: dimensions });

function expectSame(a: Quantity | null, b: Quantity): void {
  if (a === null) throw new Error("there is no such value");
  expect(Math.abs(a.value - b.value)).toBeLessThanOrEqual(1e-14 * Math.abs(b.value));
  expect(sameDimension(a.dimension, b.dimension)).toBe(true);
}

describe("the algebra of quantities", () => {
  it("undoes a product by its quotient", () => {
    fc.assert(
      fc.property(quantities, quantities, (a, b) => expectSame(divide(multiply(a, b), b), a)),
      { seed: SEED },
    );
  });
  it("undoes a square by its root, and powers by their inverse", () => {
    fc.assert(
      fc.property(quantities, (a) => {
        expectSame(squareRoot(multiply(a, a)), a);
        const back = power(power(a, 3), 1 / 3);
        expect(sameDimension(back.dimension, a.dimension)).toBe(true);
        expect(Math.abs(back.value / a.value - 1)).toBeLessThan(1e-14);
      }),
      { seed: SEED },
    );
  });
  it("adds what is alike and nothing else", () => {
    fc.assert(
      fc.property(quantities, quantities, (a, b) => {
        const alike = sameDimension(settle(a.dimension), settle(b.dimension));
        expect(add(a, b) !== null).toBe(alike);
        expect(subtract(a, b) !== null).toBe(alike);
      }),
      { seed: SEED },
    );
  });
  it("undoes a sum by its difference", () => {
    fc.assert(
      fc.property(quantities, values, (a, value) => {
        const sum = add(a, { value, dimension: a.dimension });
        const back = sum === null ? null : subtract(sum, { value, dimension: a.dimension });
        expect(Math.abs((back?.value ?? Number.NaN) - a.value)).toBeLessThanOrEqual(1e-12);
      }),
      { seed: SEED },
    );
  });
  it("has no negative zero", () => {
    expect(Object.is(negate(quantity(0)).value, 0)).toBe(true);
    expect(Object.is(divide(quantity(1, LENGTH), quantity(1, LENGTH)).dimension.length, 0)).toBe(true);
  });
});

describe("radians", () => {
  it("drop out beside lengths and masses", () => {
    const tip = multiply(quantity(440, ANGULAR_SPEED), quantity(130, LENGTH));
    expect(settled(tip).dimension).toEqual(SPEED);
    const energy = multiply(quantity(0.02, INERTIA), power(quantity(440, ANGULAR_SPEED), 2));
    expect(settled(energy).dimension).toEqual(ENERGY);
  });
  it("stay on their own and over time", () => {
    expect(settle(ANGLE)).toBe(ANGLE);
    expect(settle(ANGULAR_SPEED)).toBe(ANGULAR_SPEED);
    expect(sameDimension(divide(quantity(1, ANGLE), quantity(1, TIME)).dimension, ANGULAR_SPEED)).toBe(true);
    expect(sameDimension(ANGULAR_SPEED, divide(quantity(1), quantity(1, TIME)).dimension)).toBe(false);
  });
  it("stay through a chain of products that leaves an angle", () => {
    const chain = divide(multiply(quantity(1, ANGLE), quantity(20, LENGTH)), quantity(10, LENGTH));
    expect(settled(chain)).toEqual({ value: 2, dimension: ANGLE });
  });
});

describe("dimensions", () => {
  it("are told apart", () => {
    expect(sameDimension(LENGTH, MASS)).toBe(false);
    expect(sameDimension(NUMBER, dimension({}))).toBe(true);
    expect(sameDimension(power(quantity(2, LENGTH), 0.5).dimension, LENGTH)).toBe(false);
  });
});
