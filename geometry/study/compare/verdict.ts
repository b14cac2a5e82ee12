/** How a bar stands to the reference in one respect; `null` elsewhere says that nothing tells which is better. */
export type Verdict = "better" | "worse" | "same";

/** Of a difference against the reference, where less or more of it is wanted. */
export function verdictOn(difference: number, better: "less" | "more"): Verdict {
  if (difference === 0) return "same";
  return difference > 0 === (better === "more") ? "better" : "worse";
}
