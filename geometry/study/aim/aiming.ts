/** What is asked for, tried and answered when the best bar is searched for. */
import type { Analysis } from "../../analysis/analyse.ts";
import type { Figure, Measure } from "../../figures/figure.ts";
import type { Settings } from "../../figures/settings.ts";
import type { Problem } from "../../language/problem.ts";
import type { TextEdit } from "../../language/text.ts";
import type { LetMove } from "../balancing.ts";
import type { NotMovable } from "../movable-let.ts";
import type { EffortName } from "./search-one.ts";

export interface AimRequest {
  /** The aim in the words of the language, `most inertia by tail`; without it that of the file. */
  readonly aim?: string;
  /** The variant to be changed; `null` for the bar as it stands. */
  readonly variant?: string | null;
  readonly settings?: Partial<Settings>;
  /** The same seed gives the same answer; another one looks elsewhere first. */
  readonly seed?: number;
  readonly effort?: EffortName;
  /** Values of the lets to be rounded, written and checked, in place of a search: what one that was given up had found. */
  readonly found?: readonly (readonly number[])[];
}

/** What a figure is called and shown in. */
export interface Told {
  readonly figure: Figure;
  /** `Moment of inertia`, `Bite at 4 m/s`. */
  readonly label: string;
  readonly measure: Measure;
}

/** A goal, and what it is before and after; in the unit of the figure's key, for a bite in mm. */
export interface GoalStanding extends Told {
  readonly sense: "most" | "least";
  /** The closing speed of `bite at …`. */
  readonly atMPerS: number | null;
  readonly before: number | null;
  readonly after: number | null;
}

/** Who states a limit: the aim itself, a requirement of the file, or the settings where the file names no balance. */
export type LimitOrigin = "aim" | "require" | "expected";

/** A limit and how the bar stands to it. */
export interface LimitStanding extends Told {
  readonly origin: LimitOrigin;
  readonly relation: "<=" | ">=";
  readonly atMPerS: number | null;
  readonly limit: number;
  readonly value: number | null;
  /** Positive while the limit holds. */
  readonly margin: number | null;
  readonly holds: boolean;
  /** True where the bar is so near that the limit holds it back. */
  readonly isReached: boolean;
}

/** A let with the value it gets, and the bound at which it stands. */
interface AimedLet extends LetMove {
  readonly reached: "least" | "most" | null;
}

/** A bar that was found, as changes of the text that were checked. */
export interface AimedBar {
  readonly lets: readonly AimedLet[];
  readonly goals: readonly GoalStanding[];
  readonly limits: readonly LimitStanding[];
  /** What changes the lets where they stand, in text order; none where they stay as they are. */
  readonly edits: readonly TextEdit[];
  /** What the checker finds in the bar that it has not found before: none in a bar that is offered. */
  readonly problems: readonly Problem[];
  /** What the edits would break in other variants: there a variant of its own is the better place. */
  readonly elsewhere: readonly Problem[];
  /** The file with the edits made, worked out for the variant. */
  readonly analysis: Analysis;
  /** The bar as it is. */
  readonly before: Analysis;
}

export interface AimProgress {
  /** What the values and goals are of; the same in each step. */
  readonly about: AimAbout;
  /** Bars measured so far. */
  readonly evaluations: number;
  /** No more than this will be. */
  readonly most: number;
  /** The best bars so far, unrounded: one for one goal, those on the way to the line for two. */
  best(): readonly BestSoFar[];
}

export interface AimAbout {
  readonly goals: readonly (Told & Pick<GoalStanding, "sense">)[];
  readonly lets: readonly { readonly name: string; readonly unit: string | null }[];
}

export interface BestSoFar {
  /** A value for each let, in its own unit. */
  readonly values: readonly number[];
  /** One a goal, in the unit of the figure's key. */
  readonly goals: readonly number[];
  /** True where all limits hold. */
  readonly isFeasible: boolean;
}

export type WhyNoAim =
  | NotMovable["reason"]
  | "no-aim"
  | "bad-aim"
  | "no-such-variant"
  | "file-has-errors"
  | "unknown-figure";

export type AimOutcome =
  | {
      readonly status: "refused";
      readonly reason: WhyNoAim;
      readonly message: string;
    }
  | {
      readonly status: "infeasible";
      /** Which limit is missed by how much, in words. */
      readonly message: string;
      /** The bar that misses the limits least, not to be written unseen; null where none could be measured. */
      readonly nearest: AimedBar | null;
      readonly evaluations: number;
      readonly isStopped: boolean;
    }
  | {
      readonly status: "found";
      /** For one goal one bar; for two the line from the best in the first to the best in the second. */
      readonly bars: readonly AimedBar[];
      readonly evaluations: number;
      /** True where the search was stopped before its end. */
      readonly isStopped: boolean;
    };
