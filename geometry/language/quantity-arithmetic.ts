/**
 * Arithmetic of quantities: numbers by JavaScript, kinds by their dimensions. Nothing here knows of texts and places;
 * an impossible sum is `null`, and whether a result is finite is the caller's to ask.
 */
import { NUMBER, powerDimension, productDimension, sameDimension, settle } from "./dimension.ts";
import type { Dimension, Quantity } from "./quantity.ts";

export function quantity(value: number, dimension: Dimension = NUMBER): Quantity {
  return { value, dimension };
}

/** A quantity with its radians dropped where they mean nothing: see `settle`. */
export function settled(a: Quantity): Quantity {
  const dimension = settle(a.dimension);
  return dimension === a.dimension ? a : { value: a.value, dimension };
}

/** −a, and 0 rather than −0. */
export function negate(a: Quantity): Quantity {
  return { value: a.value === 0 ? 0 : -a.value, dimension: a.dimension };
}

/** a + b, or null where they are not of one kind. */
export function add(a: Quantity, b: Quantity): Quantity | null {
  return alike(a, b) ? { value: a.value + b.value, dimension: settle(a.dimension) } : null;
}

/** a − b, or null where they are not of one kind. */
export function subtract(a: Quantity, b: Quantity): Quantity | null {
  return alike(a, b) ? { value: a.value - b.value, dimension: settle(a.dimension) } : null;
}

export function multiply(a: Quantity, b: Quantity): Quantity {
  return { value: a.value * b.value, dimension: productDimension(a.dimension, b.dimension, 1) };
}

export function divide(a: Quantity, b: Quantity): Quantity {
  return { value: a.value / b.value, dimension: productDimension(a.dimension, b.dimension, -1) };
}

/** a ^ exponent. Fractional exponents are fine: what counts is the dimension at the end. */
export function power(a: Quantity, exponent: number): Quantity {
  return { value: a.value ** exponent, dimension: powerDimension(a.dimension, exponent) };
}

/** √a; taken by itself because it is exact where `a ** 0.5` may not be. */
export function squareRoot(a: Quantity): Quantity {
  return { value: Math.sqrt(a.value), dimension: powerDimension(a.dimension, 0.5) };
}

function alike(a: Quantity, b: Quantity): boolean {
  return sameDimension(settle(a.dimension), settle(b.dimension));
}
