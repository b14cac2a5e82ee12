/** When a belt slips: the Euler–Eytelwein relation, with the wedge of a V-groove and the pull of the belt's own turning. */

export interface Belt {
  readonly friction: number;
  /** Between the walls of the groove; `null` for a flat belt. */
  readonly grooveRad: number | null;
  /** On the pulley where it is least. */
  readonly wrapRad: number;
  /** Of the belt, kg/m. */
  readonly kgPerM: number;
}

/** The friction that acts: a groove presses the walls with 1/sin(β/2) of what a flat pulley would feel. */
export function grooveFriction({ friction, grooveRad }: Belt): number {
  return grooveRad === null ? friction : friction / Math.sin(grooveRad / 2);
}

/** The most that tight over slack side can be, e^(μ'·θ), what is used up by turning taken off both. */
export function tensionRatio(belt: Belt): number {
  return Math.exp(grooveFriction(belt) * belt.wrapRad);
}

/** The tension that a belt's own turning takes, m·v². */
export function turningTensionN(belt: Belt, beltMPerS: number): number {
  return belt.kgPerM * beltMPerS ** 2;
}

/** The least tension of the slack side for one of the tight side: Tc + (T1 − Tc)/ratio. */
export function leastSlackN(tightN: number, turningN: number, ratio: number): number {
  return turningN + (tightN - turningN) / ratio;
}

/**
 * The torque at which a belt slips that was put on with a tension: the sum of both sides stays twice that, so their most difference is
 * 2·(T0 − Tc)·(ratio − 1)/(ratio + 1). 0 where its own turning takes all of it.
 */
export function slipTorqueNM(belt: Belt, restN: number, pulleyRadiusM: number, beltMPerS: number): number {
  const left = Math.max(0, restN - turningTensionN(belt, beltMPerS));
  const ratio = tensionRatio(belt);
  return (2 * left * pulleyRadiusM * (ratio - 1)) / (ratio + 1);
}
