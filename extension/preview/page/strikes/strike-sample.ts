import type { StrikeKind } from "../../../../geometry/bite/bite.ts";
import { svg } from "../../../webview/page/dom.ts";

/** How a kind of strike is painted, for legends and lists. */
export function strikeSample(kind: StrikeKind): SVGSVGElement {
  const sample = svg("svg", { class: "strike-sample", width: 28, height: 12, "aria-hidden": "true" });
  const band = svg("path", { class: "strike-body", d: "M1 6H27", "stroke-width": 8 });
  const edge = svg("path", { class: "strike-edge", d: "M0 6H28" });
  sample.append(svg("g", { class: `strike strike-${kind}` }, band), edge);
  return sample;
}
