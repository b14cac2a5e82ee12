/** A value with the place it comes from: a published source, "common practice, no source", or "from memory". */
export interface Sourced {
  readonly value: number;
  readonly source: string;
}

/** One row of the material table. */
export interface Material {
  /** The word in the file, such as `wear_steel_450`. */
  readonly name: string;
  readonly title: string;
  readonly densityKgPerM3: Sourced;
  readonly yieldMPa: Sourced;
  readonly modulusGPa: Sourced;
}
