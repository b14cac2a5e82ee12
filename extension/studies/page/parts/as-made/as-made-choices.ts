import { isString, oneOf, shape } from "../../../../webview/checks.ts";

/** What the reader has asked for, in words; empty is as usual. */
export interface AsMadeChoices {
  readonly plate: string;
  readonly wedge: string;
  readonly cut: string;
  readonly grade: string;
  readonly parts: string;
  readonly seed: string;
  readonly spread: "uniform" | "normal";
  readonly edges: "each" | "together";
  readonly at: "tip" | "face";
  readonly teeth: "all" | "one";
  readonly by: string;
}

const FIRST: AsMadeChoices = {
  plate: "",
  wedge: "",
  cut: "",
  grade: "",
  parts: "",
  seed: "",
  spread: "uniform",
  edges: "each",
  at: "tip",
  teeth: "all",
  by: "",
};

const isChoices = shape<AsMadeChoices>({
  plate: isString,
  wedge: isString,
  cut: isString,
  grade: isString,
  parts: isString,
  seed: isString,
  spread: oneOf("uniform", "normal"),
  edges: oneOf("each", "together"),
  at: oneOf("tip", "face"),
  teeth: oneOf("all", "one"),
  by: isString,
});

export function asMadeChoicesOf(kept: unknown): AsMadeChoices {
  return isChoices(kept) ? kept : FIRST;
}
