import type { RequirableFigure } from "../language/requirable.ts";
import type { BlockWord } from "../language/vocabulary.ts";
import type { Assessment } from "./assessment.ts";

/** What a figure may be in the JSON: unknown is `null`, never 0. */
export type FigureValue =
  | number
  | string
  | null
  | readonly FigureValue[]
  | { readonly [key: string]: FigureValue };

/** The groups of what a file may say of the fight around the bar; the block of that name gives their figures. */
const BLOCK_GROUPS = ["robot", "opponent", "budget", "event"] as const satisfies readonly BlockWord[];

export const FIGURE_GROUPS = ["shape", "mass", "spin", "bite", ...BLOCK_GROUPS] as const;
export type FigureGroup = (typeof FIGURE_GROUPS)[number];

/**
 * Whether people are told of a group of which nothing is known. A file that says nothing of the robot is no worse for
 * it; that the mass is not known is worth a row of dashes. The JSON has every group.
 */
export function isToldUnknown(group: FigureGroup): boolean {
  return !BLOCK_GROUPS.some((block) => block === group);
}

/** What a figure measures: decides its unit and digits wherever people read it. */
export type Measure =
  | "count"
  | "length"
  | "point"
  | "bounds"
  | "area"
  | "secondMoments"
  | "mass"
  | "inertia"
  | "imbalance"
  | "permissible"
  | "angle"
  | "grade"
  | "rotation"
  | "speed"
  | "energy"
  | "angularMomentum"
  | "force"
  | "time"
  | "impulse"
  | "torque"
  | "turnRate"
  | "share"
  | "word";

/** How a figure can stand in `require`; `baseFactor` turns its JSON value into base units (mm, kg, s, A, rad). */
export interface Requirable extends RequirableFigure {
  readonly baseFactor: number;
}

/**
 * One figure of a bar. Adding it to the catalogue is all it takes: the JSON, the report, the preview and the
 * comparison read the catalogue.
 */
export interface Figure {
  readonly group: FigureGroup;
  /** The JSON key, its unit in the name. */
  readonly key: string;
  readonly label: string;
  /** One sentence for hovers and reference pages. */
  readonly meaning: string;
  /** `null` for what is no single figure (the bite curve): it has a table or chart of its own. */
  readonly measure: Measure | null;
  /** What a builder usually wants of it, for comparisons. */
  readonly better: "less" | "more" | null;
  readonly requirable: Requirable | null;
  /** Why it may be unknown, as a clause: "the file has no budget". */
  readonly unknownBecause?: string;
  /** The value, in the unit of the key; `null` where it cannot be known. */
  of(assessment: Assessment): FigureValue;
}
