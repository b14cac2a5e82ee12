/** What is a matter of the shop. All three are common practice, without a published source. */
export interface OutlineRules {
  /** Least diameter of a hole and width of a slot, in plate thicknesses: smaller ones burn shut or come out rough. */
  readonly leastHoleToThickness: number;
  /** Least metal between a hole and an edge or another hole, in plate thicknesses: less warps, and tears out. */
  readonly leastBridgeToThickness: number;
  /** More segments than this are doubted: cutting heads stop and start on many short pieces. */
  readonly mostSegments: number;
}

/** Waterjet and laser: holes and bridges at least as wide as the plate is thick. */
export const DEFAULT_OUTLINE_RULES: OutlineRules = {
  leastHoleToThickness: 1,
  leastBridgeToThickness: 1,
  mostSegments: 2000,
};
