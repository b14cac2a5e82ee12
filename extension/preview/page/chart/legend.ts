import { el, svg } from "../../../webview/page/dom.ts";
import type { PreviewStrings } from "../../strings.ts";
import { CURVE_NAMES } from "./chart-model.ts";

/** Which line is which, by its dashes as well as its colour, and the band by its edges. */
export function createLegend(strings: PreviewStrings): HTMLElement {
  const lines = CURVE_NAMES.map((name) =>
    item(svg("path", { class: `curve curve-${name}`, d: "M1 6H33" }), strings[name]),
  );
  const band = item(svg("path", { class: "chart-band", d: "M1 1H33V11H1Z" }), strings.eightInTen);
  return el("ul", { class: "legend" }, ...lines, band);
}

function item(shape: SVGElement, name: string): HTMLElement {
  const sample = svg("svg", { class: "legend-sample", width: 34, height: 12, "aria-hidden": "true" });
  sample.append(shape);
  return el("li", {}, sample, el("span", { class: "legend-name" }, name));
}
