/** Estimates around a blow, each with what it takes for granted. */

/** Standard gravity, m/s². */
export const GRAVITY = 9.806_65;

/** How high a body rises that is thrown up at a speed, v²/2g: no drag, nothing in its way; 0 for one that is pushed down. */
export function riseM(upMPerS: number): number {
  return upMPerS > 0 ? upMPerS ** 2 / (2 * GRAVITY) : 0;
}

/** A solid box of even density about the axis across it, m·(l² + h²)/12: what a robot is taken for whose inertia is not known. */
export function boxInertiaKgM2(massKg: number, lengthM: number, heightM: number): number {
  return (massKg * (lengthM ** 2 + heightM ** 2)) / 12;
}

/** The mean force of a blow that lasts a stated time, J/Δt; its peak is higher, by π/2 for half a sine wave. */
export function meanForceN(impulseNS: number, contactS: number): number {
  return impulseNS / contactS;
}

/** What one of `count` bolts has to carry in shear if all carry the same: the best that a good fit gives. */
export function boltForceN(forceN: number, count: number): number {
  return forceN / count;
}

/**
 * Bending stress in a round solid axle, 32·M/(π·d³), in MPa. Loaded in the middle between two supports M = F·L/4, at the end of
 * an axle held on one side M = F·L. Source: bending of beams.
 */
export function axleBendingMPa(
  forceN: number,
  axle: { readonly diameterM: number; readonly lengthM: number; readonly held: "both sides" | "one side" },
): number {
  const momentNM = (forceN * axle.lengthM) / (axle.held === "both sides" ? 4 : 1);
  return (32 * momentNM) / (Math.PI * axle.diameterM ** 3) / 1e6;
}
