/** The moment of a rotor that is turned out of its plane. x ahead, y left, z up. */

export interface Vector3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/**
 * What the frame feels, H × Ω, of a rotor of angular momentum H that it carries along as it turns at Ω. For a rotor that is the
 * same all round; a bar with two arms gives the same in the mean and swings about it twice a turn, between
 * nearly nothing and nearly twice as much for a slender one.
 * Source: rate of change of angular momentum in a turning frame, Ω × H, and its reaction.
 */
export function gyroscopicMomentNM(angularMomentum: Vector3, turningRadPerS: Vector3): Vector3 {
  const { x: a, y: b, z: c } = angularMomentum;
  const { x: p, y: q, z: r } = turningRadPerS;
  return { x: b * r - c * q, y: c * p - a * r, z: a * q - b * p };
}
