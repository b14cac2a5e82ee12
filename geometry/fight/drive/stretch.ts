/**
 * A stretch of a spin-up on which the torque is a − b·ω − c·ω²: what is left of motor torque that falls with the spin, and air drag.
 * The equation of motion I·dω/dt = a − b·ω − c·ω² has a closed solution, so no integrator is used and no
 * step is chosen: with s = √(b² + 4ac) and q = (b + s)/2 the share g = (a/q − ω)/(q + c·ω) falls as e^(−s·t/I).
 * For c = 0 it is the exponential of a motor, for b = 0 the hyperbolic tangent of an even torque against drag.
 */
export interface Stretch {
  readonly inertiaKgM2: number;
  /** a > 0 */
  readonly torqueNM: number;
  /** b ≥ 0 */
  readonly perRadPerS: number;
  /** c ≥ 0 */
  readonly perRadPerSSquared: number;
}

/** The spin that is reached in the end, a/q; Infinity where nothing holds it back. */
export function endRadPerS(stretch: Stretch): number {
  return stretch.torqueNM / shapeOf(stretch).q;
}

/** The spin after a time from a given one. */
export function spinAfterRadPerS(stretch: Stretch, fromRadPerS: number, seconds: number): number {
  const { s, q } = shapeOf(stretch);
  const { torqueNM, inertiaKgM2, perRadPerSSquared } = stretch;
  if (s === 0) return fromRadPerS + (torqueNM * seconds) / inertiaKgM2;
  const share = shareOf(stretch, fromRadPerS) * Math.exp((-s * seconds) / inertiaKgM2);
  return (torqueNM / q - share * q) / (1 + share * perRadPerSSquared);
}

/** The time from one spin to another; Infinity for one that is never reached. */
export function secondsBetween(stretch: Stretch, fromRadPerS: number, toRadPerS: number): number {
  const { s } = shapeOf(stretch);
  const { torqueNM, inertiaKgM2 } = stretch;
  if (s === 0) return ((toRadPerS - fromRadPerS) * inertiaKgM2) / torqueNM;
  const left = shareOf(stretch, toRadPerS) / shareOf(stretch, fromRadPerS);
  return left > 0 ? (-Math.log(left) * inertiaKgM2) / s : Number.POSITIVE_INFINITY;
}

function shapeOf({ torqueNM, perRadPerS, perRadPerSSquared }: Stretch): { s: number; q: number } {
  const s = Math.sqrt(perRadPerS ** 2 + 4 * torqueNM * perRadPerSSquared);
  return { s, q: (perRadPerS + s) / 2 };
}

function shareOf(stretch: Stretch, radPerS: number): number {
  const { q } = shapeOf(stretch);
  return (stretch.torqueNM / q - radPerS) / (q + stretch.perRadPerSSquared * radPerS);
}
