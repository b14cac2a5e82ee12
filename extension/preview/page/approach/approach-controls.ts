import { el, freshId, setAttributes, setHidden, setText } from "../../../webview/page/dom.ts";
import { fill, type PreviewStrings } from "../../strings.ts";

export interface Scrubber {
  readonly element: HTMLElement;
  /** Put it at a value without telling anyone; `spoken` is what a screen reader says of it, else `text`. */
  set(value: number, text: string, spoken?: string): void;
  range(least: number, most: number, step: number): void;
}

/** A named slider with its value in words beside it. */
export function createScrubber(name: string, changed: (value: number) => void): Scrubber {
  const id = freshId("scrubber");
  const input = el("input", { type: "range", id, min: 0, max: 1, step: 0.001, value: 0 });
  const shown = el("span", { class: "scrubber-value", "aria-hidden": "true" });
  input.addEventListener("input", () => changed(input.valueAsNumber));
  return {
    element: el("div", { class: "scrubber" }, el("label", { for: id }, name), input, shown),
    set: (value, text, spoken = text) => {
      input.valueAsNumber = value;
      setText(shown, text);
      setAttributes(input, { "aria-valuetext": spoken });
    },
    range: (least, most, step) => setAttributes(input, { min: least, max: most, step }),
  };
}

export interface PlayButton {
  readonly element: HTMLElement;
  /** Where nothing may move by itself there is no such button, and the note says so. */
  update(playing: boolean, reduced: boolean): void;
}

export function createPlayButton(strings: PreviewStrings, pressed: () => void): PlayButton {
  const element = el("button", { type: "button", class: "main-action approach-play" }, strings.play);
  element.addEventListener("click", pressed);
  return {
    element,
    update: (playing, reduced) => {
      setHidden(element, reduced);
      setText(element, playing ? strings.pause : strings.play);
    },
  };
}

/** How slow it is shown, or that it stands still, and what the phase counts from. */
export function noteText(slowdown: number, reduced: boolean, strings: PreviewStrings): string {
  const motion = reduced ? strings.approachSteps : fill(strings.slowedDown, slowdown);
  return `${motion} ${strings.phaseMeaning}`;
}
