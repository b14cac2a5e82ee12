import { isString, orNull, shape } from "../../../../webview/checks.ts";
import type { VaryInput } from "../../../worker/vary-job.ts";

/** One let to vary, as the form has it; empty fields are filled from the file. */
export interface AskedLet {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly count: string;
}

/** What the reader asks for. */
export interface Asked {
  readonly first: AskedLet;
  /** Null for one let alone. */
  readonly second: AskedLet | null;
  /** Key of a figure, or `bite`. */
  readonly figure: string;
  /** The closing speed of the bite. */
  readonly speed: string;
}

export const BITE = "bite";

/** Values of one let; of each of two. */
export const COUNTS = { one: "41", two: "21" } as const;

export const FIRST_LET: AskedLet = { name: "", from: "", to: "", count: COUNTS.one };
const FIRST: Asked = { first: FIRST_LET, second: null, figure: "massKg", speed: "4 m/s" };

const isLet = shape<AskedLet>({ name: isString, from: isString, to: isString, count: isString });
const isAsked = shape<Asked>({ first: isLet, second: orNull(isLet), figure: isString, speed: isString });

/** What was asked for before a reload, or what is asked for at first. */
export function askedOf(kept: unknown): Asked {
  return isAsked(kept) ? kept : FIRST;
}

/** The same as the language would have it: `tail from 80 mm to 120 mm`, `bite at 4 m/s`. */
export function wordsOf({
  first,
  second,
  figure,
  speed,
}: Asked): Pick<VaryInput, "lets" | "counts" | "figures"> {
  const lets = second === null ? [first] : [first, second];
  return {
    lets: lets.map(({ name, from, to }) =>
      from.trim() === "" && to.trim() === "" ? name : `${name} from ${from} to ${to}`,
    ),
    // What is no number is refused by the study, in its own words.
    counts: lets.map(({ count }) => Number(count) || 0),
    figures: [figure === BITE ? `bite at ${speed}` : figure],
  };
}
