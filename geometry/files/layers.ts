/** The layers of every drawing, whatever its format. MARK is for people: it is not cut. */
export const CUT_OUTER = "CUT_OUTER";
export const CUT_INNER = "CUT_INNER";
export const MARK = "MARK";

export type CutLayer = typeof CUT_OUTER | typeof CUT_INNER;
