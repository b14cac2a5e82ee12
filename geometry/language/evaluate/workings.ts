import type { Problem, Report } from "../problem.ts";
import type { Dimension, Quantity } from "../quantity.ts";
import type { Expression } from "../tree.ts";
import { quoted } from "./expression-shape.ts";
import { failure } from "./problems.ts";
import { wrongKind } from "./wrong-kind.ts";

/** What expressions are evaluated in. */
export interface Workings {
  readonly text: string;
  /** The value of a let: `null` where it has a problem of its own, `undefined` where there is no such let. */
  readonly lookUp: (name: string) => Quantity | null | undefined;
  /** Names of lets, for "did you mean". */
  readonly names: readonly string[];
  /** The unit in which the file writes values of a kind. */
  readonly usualUnit: (dimension: Dimension) => string;
  readonly report: Report;
}

/** Reports a problem; the value is then null. */
export function fail({ report }: Workings, problem: Problem): null {
  report(problem);
  return null;
}

/** What a place needs: the kind, and the head of the message about anything else: "The thickness is". */
export interface Need {
  readonly expected: Dimension;
  readonly subject: string;
  /** True where a number without its unit is of the wrong kind rather than unfinished, as in `sin(30)`. */
  readonly strict?: boolean;
}

/** Reports a value of the wrong kind. */
export function blame(workings: Workings, expression: Expression, got: Quantity, need: Need): null {
  const { text, usualUnit } = workings;
  return fail(workings, wrongKind({ text, usualUnit, expression, got, strict: false, ...need }));
}

/** The value, if it is a finite number, and 0 for −0; otherwise the expression is to blame. */
export function finite(workings: Workings, worth: Quantity, { range }: Expression): Quantity | null {
  if (worth.value === 0) return { value: 0, dimension: worth.dimension };
  if (Number.isFinite(worth.value)) return worth;
  const what = Number.isNaN(worth.value) ? "has no value" : "is too large to compute with";
  const message = `${quoted(workings.text, range) ?? "This"} ${what}.`;
  return fail(workings, failure("not-finite", range, message));
}
