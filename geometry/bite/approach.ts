/** How a target comes in: everything but the outline. */
export interface BiteCondition {
  readonly closingMPerS: number;
  /** The spin, above 0. */
  readonly radPerS: number;
  /** Strikes up to this angle between the struck face and the way it moves are square. */
  readonly squareStrikeRad: number;
}

const MM_PER_M = 1000;

/**
 * How far the target comes nearer while the bar turns a radian: κ = v/ω, in mm. Depths and shares depend on
 * nothing else.
 */
export function advanceMmPerRad({ closingMPerS, radPerS }: Omit<BiteCondition, "squareStrikeRad">): number {
  return (closingMPerS * MM_PER_M) / radPerS;
}

/** The closing speed with a given advance. */
export function closingMPerS(advance: number, radPerS: number): number {
  return (advance * radPerS) / MM_PER_M;
}
