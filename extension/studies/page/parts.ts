import type { StudyPart } from "./part.ts";
import { comparePart } from "./parts/compare/compare-part.ts";
import { varyPart } from "./parts/vary/vary-part.ts";

/** The studies in the order of their tabs: a new study adds its part here. */
export const PARTS: readonly StudyPart[] = [comparePart, varyPart];
