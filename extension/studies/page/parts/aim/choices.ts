import { isString, oneOf, orNull, shape } from "../../../../webview/checks.ts";

/** What the reader has chosen. */
export interface AimChoices {
  /** The aim that was typed; `null` for the line of the text. */
  readonly typed: string | null;
  readonly effort: "quick" | "usual" | "thorough";
}

const FIRST: AimChoices = { typed: null, effort: "usual" };

const isChoices = shape<AimChoices>({
  typed: orNull(isString),
  effort: oneOf("quick", "usual", "thorough"),
});

export function aimChoicesOf(kept: unknown): AimChoices {
  return isChoices(kept) ? kept : FIRST;
}
