import type { Cause } from "./model.ts";
import { WEDGE_OVER_MM } from "./plate-tolerance.ts";

/** What each cause is called. */
export const CAUSE_NAMES: Readonly<Record<Cause, string>> = {
  bore: "the bore off its place, and the axis with it",
  wedge: "the plate thicker on one side",
  edges: "edges cut too far out or in",
  holes: "other holes off their places",
};

/** What is assumed, to be told with the numbers. */
export const TOLERANCE_NOTES: readonly string[] = [
  "Thickness anywhere within the limits of the plate; within one plate it is taken to run evenly, the permitted " +
    `difference across ${WEDGE_OVER_MM} mm (an assumption: state what you measured instead).`,
  "A dimension has two ends, two edges or an edge and a hole: each takes half of what it may be off. To first order; " +
    "how the bore sits on its shaft, bending, and heat are not in it.",
  "EN 10029 is for hot-rolled steel plate, ISO 9013 for thermal cutting; other plate and cuts: state your own limits.",
];

export const TOLERANCE_CAUTIONS: readonly string[] = [
  "These are estimates for planning: balance the real bar, whatever they say.",
  "Grinding heats the edge and leaves notches; keep tooth and roots as drawn, and have the part inspected for cracks.",
  "The event's rules and its safety inspector decide.",
];
