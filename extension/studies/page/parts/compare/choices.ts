import { arrayOf, isBoolean, isString, oneOf, orNull, shape } from "../../../../webview/checks.ts";

/** What the reader has chosen in the comparison. */
export interface Choices {
  /** Key of the bar that the others are told against; the first where it is `null` or gone. */
  readonly reference: string | null;
  /** Keys of the bars that are left out. */
  readonly hidden: readonly string[];
  readonly onlyDifferent: boolean;
  readonly depth: "deepest" | "mean";
}

const FIRST: Choices = { reference: null, hidden: [], onlyDifferent: false, depth: "deepest" };

const isChoices = shape<Choices>({
  reference: orNull(isString),
  hidden: arrayOf(isString),
  onlyDifferent: isBoolean,
  depth: oneOf("deepest", "mean"),
});

/** The choices that were kept, or the first ones. */
export function choicesOf(kept: unknown): Choices {
  return isChoices(kept) ? kept : FIRST;
}

export type ChangeChoices = (changes: Partial<Choices>) => void;
