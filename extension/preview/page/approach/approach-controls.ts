import { el, freshId, setAttributes, setText } from "../dom.ts";

export interface Scrubber {
  readonly element: HTMLElement;
  value(): number;
  /** Put it at a value without telling anyone; `spoken` is what a screen reader says of it, else `text`. */
  set(value: number, text: string, spoken?: string): void;
  range(least: number, most: number, step: number): void;
}

/** A named slider with its value in words beside it. */
export function createScrubber(name: string, changed: () => void): Scrubber {
  const id = freshId("scrubber");
  const input = el("input", { type: "range", id, min: 0, max: 1, step: 0.001, value: 0 });
  const shown = el("span", { class: "scrubber-value", "aria-hidden": "true" });
  input.addEventListener("input", changed);
  return {
    element: el("div", { class: "scrubber" }, el("label", { for: id }, name), input, shown),
    value: () => input.valueAsNumber,
    set: (value, text, spoken = text) => {
      input.valueAsNumber = value;
      setText(shown, text);
      setAttributes(input, { "aria-valuetext": spoken });
    },
    range: (least, most, step) => setAttributes(input, { min: least, max: most, step }),
  };
}
