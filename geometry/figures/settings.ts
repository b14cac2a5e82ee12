/** The judgements that are a matter of taste or of the shop. Every face takes them from here unless told otherwise. */
export interface Settings {
  /** A strike is square up to this angle between the struck face and the way it moves. */
  readonly squareStrikeDeg: number;
  /** How many closing speeds a bite curve has. */
  readonly biteSpeeds: number;
  /** Least hole diameter in plate thicknesses (waterjet and laser; common practice, no source). */
  readonly leastHoleToThickness: number;
  /** Least bridge between a hole and an edge in plate thicknesses (common practice, no source). */
  readonly leastBridgeToThickness: number;
  /** More segments than this are doubted: cutting heads stop and start on many short pieces. */
  readonly mostSegments: number;
  /** The balance grade, in mm/s, that is expected where the file requires none (ISO 21940-11: 40 for drive shafts). */
  readonly balanceGrade: number;
  /** Closing speeds to study where the file names none, in m/s. */
  readonly approachMPerS: readonly [number, number];
}

export const DEFAULT_SETTINGS: Settings = {
  squareStrikeDeg: 35,
  biteSpeeds: 40,
  leastHoleToThickness: 1,
  leastBridgeToThickness: 1,
  mostSegments: 2000,
  balanceGrade: 40,
  approachMPerS: [0.5, 6],
};
