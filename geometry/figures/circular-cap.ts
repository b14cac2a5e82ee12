/**
 * The area between an arc and its chord, a "cap", and its moments. They depend on half the sweep alone; the caller
 * scales them. Every factor has the sign of the sweep, so a clockwise arc takes its cap away.
 *
 * Two frames, because neither serves every sweep: about the circle's centre the formulas are short and a full turn is
 * nothing special, but a shallow arc of a huge circle would be a difference of huge numbers; about the middle of the
 * chord a shallow arc is what it looks like, but a full turn has no chord.
 */

/** Factors of one cap in the frame whose first axis points from the circle's centre to the middle of the arc. */
export interface CapFactors {
  /** ∫dA */
  readonly area: number;
  /** ∫n dA, n along the first axis; along the second axis the first moment is 0. */
  readonly first: number;
  /** ∫n² dA */
  readonly along: number;
  /** ∫t² dA, t along the second axis; ∫nt dA is 0. */
  readonly across: number;
}

/**
 * Up to this half sweep `shallowCap` holds, from there `deepCap`. At 0.5 rad the radius is twice the half chord, so
 * `deepCap` loses three digits of a cap's own smallest moment at worst, and the series of `shallowCap` end below
 * rounding.
 */
export const SHALLOW_HALF_SWEEP_RAD = 0.5;

/**
 * A cap about the circle's centre, in powers of the radius (area r², first r³, along and across r⁴).
 * Source: circular segment, handbook formulas (sector less triangle).
 */
export function deepCap(halfSweepRad: number): CapFactors {
  const s = Math.sin(halfSweepRad);
  const c = Math.cos(halfSweepRad);
  const area = halfSweepRad - s * c;
  const cube = s * s * s;
  return {
    area,
    first: (2 / 3) * cube,
    along: area / 4 + (cube * c) / 2,
    across: area / 4 - (cube * c) / 6,
  };
}

/**
 * A cap about the middle of its chord, in powers of half the chord, a = r·sin h (area a², first a³, along and across
 * a⁴), for |h| up to `SHALLOW_HALF_SWEEP_RAD`. Here the first axis points to the right of the way from start to end
 * whatever the sign of the sweep; so `first` is never negative.
 * Source: Taylor series in h of the handbook formulas moved to the chord (each table names its function); the last
 * term is below 1e-17 of the first.
 */
export function shallowCap(halfSweepRad: number): CapFactors {
  const h = halfSweepRad;
  const square = h * h;
  return {
    area: h * polynomial(AREA, square),
    first: square * polynomial(FIRST, square),
    along: h * square * polynomial(ALONG, square),
    across: h * polynomial(ACROSS, square),
  };
}

/** Horner's rule, by `reduce`: it is inlined, unlike a loop over the elements, which costs three times as much. */
function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((value, coefficient) => value * x + coefficient, 0);
}

// Coefficients of the powers of h², highest first. With s = sin h, c = cos h and f = h − sc:

/** f / s² = h·Σ */
const AREA: readonly number[] = [
  5.6188096367579724e-11,
  5.083415171780577e-10,
  4.561030240918436e-9,
  4.0514123730256185e-8,
  3.5543374063967485e-7,
  3.069632699262329e-6,
  2.5972851369676765e-5,
  4 / 18711,
  8 / 4725,
  4 / 315,
  4 / 45,
  2 / 3,
];
/** (s − hc − s³/3) / s³ = h²·Σ */
const FIRST: readonly number[] = [
  7.709330655075938e-11,
  6.461631082271668e-10,
  5.337585930369606e-9,
  4.332978728872515e-8,
  3.4437005170717757e-7,
  2.6657530547975617e-6,
  4 / 200475,
  0.00014285068253322222,
  2 / 2079,
  4 / 675,
  2 / 63,
  2 / 15,
];
/** ((f + 2s³c)/4 − 4s³c/3 + c²f) / s⁴ = h³·Σ */
const ALONG: readonly number[] = [
  9.739302003588493e-11,
  7.615683827796638e-10,
  5.838438239219352e-9,
  4.3719711046260315e-8,
  3.182210507103959e-7,
  2.236561387941238e-6,
  1.503862070310872e-5,
  9.54342541644129e-5,
  0.0005595815119624644,
  152 / 51975,
  4 / 315,
  4 / 105,
];
/** (f − 2s³c/3) / 4s⁴ = h·Σ */
const ACROSS: readonly number[] = [
  1.6355129582944871e-10,
  1.2693559512794821e-9,
  9.656148257435749e-9,
  7.174703488813042e-8,
  5.183990257161826e-7,
  3.62165068047421e-6,
  2.428142110681793e-5,
  0.00015467190070364673,
  16 / 17325,
  8 / 1575,
  8 / 315,
  2 / 15,
];
