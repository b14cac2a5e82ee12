import type { StudyPart } from "./part.ts";
import { aimPart } from "./parts/aim/aim-part.ts";
import { asMadePart } from "./parts/as-made/as-made-part.ts";
import { comparePart } from "./parts/compare/compare-part.ts";
import { drillingPart } from "./parts/drilling/drilling-part.ts";
import { varyPart } from "./parts/vary/vary-part.ts";

/** The studies in the order of their tabs: a new study adds its part here. */
export const PARTS: readonly StudyPart[] = [comparePart, varyPart, aimPart, drillingPart, asMadePart];
