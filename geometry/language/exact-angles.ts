/**
 * Sines and cosines that are exact where a drawing needs them: 90 deg has the cosine 0, not 6e-17, so that a point at
 * `(40 mm @ 90 deg)` lies on the axis.
 */

/** Quarter turns are taken as whole within this many units of rounding: an angle is a product of a few roundings. */
const QUARTER_TOLERANCE = 4 * Number.EPSILON;

/** The cosine and sine of an angle in rad. */
export function cosSin(angleRad: number): { readonly cos: number; readonly sin: number } {
  const quarters = angleRad / (Math.PI / 2);
  const whole = Math.round(quarters);
  if (Math.abs(quarters - whole) > QUARTER_TOLERANCE * Math.max(1, Math.abs(whole))) {
    return { cos: Math.cos(angleRad), sin: Math.sin(angleRad) };
  }
  const [cos, sin] = QUARTERS[((whole % 4) + 4) % 4] ?? [1, 0];
  return { cos, sin };
}

const QUARTERS: readonly (readonly [cos: number, sin: number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];
