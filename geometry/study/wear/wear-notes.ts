import type { WearModel } from "./wear.ts";

/** What each model takes for given, to be told with the numbers. */
export const WEAR_NOTES: Readonly<Record<WearModel, string>> = {
  tip:
    "Worn from the tip: what is farther out than the worn radius is gone, and the tip is left flat, an arc about the " +
    "spin axis. Real tips round off and chip.",
  face:
    "Face ground back: the line or arc on the leading side of the tip moves into the metal, parallel to itself, until it " +
    "meets the back of the tooth; the root stays as drawn, with a step at the end of the face. Grind that round.",
};

export const WEAR_CAUTIONS: readonly string[] = [
  "Grind all teeth alike and cool; heat softens hardened steel, and a sharp step at a root starts a crack.",
  "Balance the real bar again after grinding, and inspect it for cracks after every fight.",
  "A worn part is a weaker part: have a qualified person judge it. The event's rules and its safety inspector decide.",
];
