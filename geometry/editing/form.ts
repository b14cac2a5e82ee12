/** What forms are made of: their parts, and the parts that several statements share. */
import { SPEED } from "../language/dimension.ts";
import type { Dimension } from "../language/quantity.ts";

export type Taking =
  /** An expression; `dimension` is null where any kind will do. */
  | { readonly kind: "value"; readonly dimension: Dimension | null; readonly example: string }
  /** `isFirst` where there is no point before, from which `by` could count. */
  | { readonly kind: "point"; readonly isFirst: boolean }
  | { readonly kind: "words"; readonly words: readonly string[] }
  /** The value of an override, of the kind of its let. */
  | { readonly kind: "override" }
  /** What a requirement compares with, of the kind of its figure. */
  | { readonly kind: "limit" }
  /** `isLimited` where a limit is to follow, as in a requirement. */
  | { readonly kind: "figure"; readonly takesSpeed: boolean; readonly isLimited: boolean }
  | {
      readonly kind:
        | "text"
        | "new-name"
        | "let-name"
        | "material"
        | "relation"
        | "equals"
        | "path"
        | "overrides";
    };

export interface Part {
  /** The words before the value, as alternatives; none where the value stands by itself. */
  readonly leads: readonly (readonly string[])[];
  /** Null where the words are all there is. */
  readonly takes: Taking | null;
  /** The part as parameter help shows it, such as `radius r`. */
  readonly shown: string;
  readonly about: string;
  readonly isOptional: boolean;
}

export interface Form {
  /** The word of the statement or step; in an override any name stands there. */
  readonly keyword: string;
  readonly parts: readonly Part[];
}

export function value(dimension: Dimension | null, example: string): Taking {
  return { kind: "value", dimension, example };
}

export function part(lead: string, takes: Taking | null, shown: string, about: string): Part {
  const leads = lead === "" ? [] : lead.split("|").map((words) => words.split(" "));
  return { leads, takes, shown, about, isOptional: false };
}

export function optional(lead: string, takes: Taking | null, shown: string, about: string): Part {
  return { ...part(lead, takes, shown, about), isOptional: true };
}

export const RELATION = part("", { kind: "relation" }, "<=|>=", "At most, or at least.");
export const LIMIT = part(
  "",
  { kind: "limit" },
  "limit",
  "A value of the figure's kind, or a balance grade such as G40.",
);
export const AT_SPEED = part("at", value(SPEED, "3 m/s"), "at speed", "The closing speed that is meant.");
