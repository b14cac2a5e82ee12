import { fixed } from "../../../../../geometry/figures/present.ts";
import { fill } from "../../../../webview/fill.ts";
import { keepChildren, setAttributes, setHidden, setText, svg } from "../../../../webview/page/dom.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { DrillingResult } from "../../../worker/drilling-job.ts";

/** Room around the outline, as a share of its extent. */
const MARGIN_SHARE = 0.04;
const CROSS_SHARE = 0.03;

/** The outline with the holes on it, numbered as in the table. */
export function createHolePicture(strings: StudiesStrings): {
  readonly element: SVGSVGElement;
  update(result: DrillingResult): void;
} {
  const shape = svg("path", { class: "series series-0 series-reference", "fill-rule": "evenodd" });
  const cross = svg("path", { class: "axis-cross" });
  const holes = svg("g");
  const numbers = svg("g", { "aria-hidden": "true" });
  const picture = svg("svg", { class: "overlay-picture", role: "img" }, shape, cross, holes, numbers);
  return {
    element: picture,
    update: ({ outline, plan }) => {
      setHidden(picture, outline === null);
      if (!outline) return;
      const [x0, y0, x1, y1] = outline.boundsMm;
      const extent = Math.max(x1 - x0, y1 - y0);
      const margin = MARGIN_SHARE * extent;
      const box = [x0 - margin, -y1 - margin, x1 - x0 + 2 * margin, y1 - y0 + 2 * margin];
      const places = plan.holes
        .map(({ drill, radiusMm, angleDeg }) =>
          fill(strings.holeAt, drill, fixed(radiusMm, 2), fixed(angleDeg, 1)),
        )
        .join("; ");
      setAttributes(picture, {
        viewBox: box.map((side) => Number(side.toFixed(3))).join(" "),
        "aria-label": fill(strings.holePicture, plan.holes.length, places),
      });
      setAttributes(shape, { d: outline.path });
      const arm = CROSS_SHARE * extent;
      setAttributes(cross, { d: `M${-arm} 0H${arm}M0 ${-arm}V${arm}` });
      keepChildren(
        holes,
        plan.holes,
        () => svg("circle", { class: "drill-hole" }),
        (circle, { centreMm: [x = 0, y = 0], diameterMm }) =>
          setAttributes(circle, { cx: x, cy: -y, r: diameterMm / 2 }),
      );
      keepChildren(
        numbers,
        plan.holes,
        () => svg("text", { class: "drill-number" }),
        (text, { centreMm: [x = 0, y = 0], diameterMm }, i) => {
          const size = Math.max(diameterMm * 0.8, extent * 0.018);
          setAttributes(text, { x, y: -y + size * 0.35, "font-size": size });
          setText(text, String(i + 1));
        },
      );
    },
  };
}
