/**
 * Dimensions: what kind of value a number is. An angle is a dimension of its own, so that `sin(30)` and `sin(30 deg)`
 * are told apart and 70 turns a second are not 70 per second.
 */
import type { Dimension } from "./quantity.ts";

type Exponents = Partial<Dimension>;

/** A dimension from the exponents that are not zero. */
export function dimension(exponents: Exponents): Dimension {
  return Object.freeze({ length: 0, mass: 0, time: 0, current: 0, angle: 0, ...exponents });
}

export const NUMBER = dimension({});
export const LENGTH = dimension({ length: 1 });
export const AREA = dimension({ length: 2 });
export const VOLUME = dimension({ length: 3 });
export const MASS = dimension({ mass: 1 });
export const TIME = dimension({ time: 1 });
export const CURRENT = dimension({ current: 1 });
export const ANGLE = dimension({ angle: 1 });
export const SPEED = dimension({ length: 1, time: -1 });
export const ACCELERATION = dimension({ length: 1, time: -2 });
export const ANGULAR_SPEED = dimension({ angle: 1, time: -1 });
export const FREQUENCY = dimension({ time: -1 });
export const DENSITY = dimension({ mass: 1, length: -3 });
export const FORCE = dimension({ mass: 1, length: 1, time: -2 });
export const STRESS = dimension({ mass: 1, length: -1, time: -2 });
export const ENERGY = dimension({ mass: 1, length: 2, time: -2 });
export const POWER = dimension({ mass: 1, length: 2, time: -3 });
export const INERTIA = dimension({ mass: 1, length: 2 });
export const IMBALANCE = dimension({ mass: 1, length: 1 });
export const ANGULAR_MOMENTUM = dimension({ mass: 1, length: 2, time: -1 });
export const VOLTAGE = dimension({ mass: 1, length: 2, time: -3, current: -1 });
export const RESISTANCE = dimension({ mass: 1, length: 2, time: -3, current: -2 });
export const CHARGE = dimension({ current: 1, time: 1 });

/**
 * Exponents that differ by less are equal: fractional powers such as `^(1/3)` come back with errors of a few 1e-16,
 * and no exponent that means something has a denominator near a billion.
 */
const EXPONENT_TOLERANCE = 1e-9;

/** True where both are the same kind of value. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return (
    a === b ||
    (sameExponent(a.length, b.length) &&
      sameExponent(a.mass, b.mass) &&
      sameExponent(a.time, b.time) &&
      sameExponent(a.current, b.current) &&
      sameExponent(a.angle, b.angle))
  );
}

/** True for a plain number. */
export function isNumber(a: Dimension): boolean {
  return sameDimension(a, NUMBER);
}

/** The dimension of a product, `a · b^power`; a quotient has `power` −1. Radians are kept: see `settle`. */
export function productDimension(a: Dimension, b: Dimension, power: number): Dimension {
  if (b === NUMBER) return a;
  return {
    length: tidy(a.length + b.length * power),
    mass: tidy(a.mass + b.mass * power),
    time: tidy(a.time + b.time * power),
    current: tidy(a.current + b.current * power),
    angle: tidy(a.angle + b.angle * power),
  };
}

/** The dimension of `a ^ power`. */
export function powerDimension(a: Dimension, power: number): Dimension {
  return productDimension(NUMBER, a, power);
}

/**
 * Radians drop out beside length, mass or current: an angle times a radius is a length, a spin times a radius is a
 * speed, and ½·I·ω² is an energy. On its own an angle stays one, so a spin is never taken for a plain "per second".
 */
export function settle(a: Dimension): Dimension {
  if (a.angle === 0 || (a.length === 0 && a.mass === 0 && a.current === 0)) return a;
  return { ...a, angle: 0 };
}

function sameExponent(a: number, b: number): boolean {
  return Math.abs(a - b) < EXPONENT_TOLERANCE;
}

/** Takes the rounding error off an exponent that is a whole number; also turns −0 into 0. */
function tidy(exponent: number): number {
  const whole = Math.round(exponent);
  return sameExponent(exponent, whole) ? whole + 0 : exponent;
}
