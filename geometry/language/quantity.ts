/**
 * A physical value: a plain number in the base units below with the exponents of its dimension.
 * Base units: mm, kg, s, A, rad. Millimetres, so that a length in the file keeps every digit it was written with.
 */
export interface Dimension {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly current: number;
  readonly angle: number;
}

export interface Quantity {
  readonly value: number;
  readonly dimension: Dimension;
}
