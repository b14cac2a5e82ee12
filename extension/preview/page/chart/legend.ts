import type { PreviewStrings } from "../../strings.ts";
import { el, svg } from "../dom.ts";
import { CURVE_NAMES } from "./chart-model.ts";

/** Which line is which, by its dashes as well as its colour. */
export function createLegend(strings: PreviewStrings): HTMLElement {
  const items = CURVE_NAMES.map((name) =>
    el("li", {}, lineSample(name), el("span", { class: "legend-name" }, strings[name])),
  );
  return el("ul", { class: "legend" }, ...items);
}

function lineSample(name: string): SVGSVGElement {
  const sample = svg("svg", { class: "legend-sample", width: 34, height: 8, "aria-hidden": "true" });
  sample.append(svg("path", { class: `curve curve-${name}`, d: "M1 4H33" }));
  return sample;
}
