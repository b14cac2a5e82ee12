import { fill } from "../../../../webview/fill.ts";
import {
  el,
  freshId,
  keepChildren,
  setAttributes,
  setHidden,
  setText,
  svg,
} from "../../../../webview/page/dom.ts";
import { lengthText } from "../../../../webview/page/units.ts";
import { seriesClass, seriesSample } from "../../chart/line-chart.ts";
import type { PartContext } from "../../part.ts";
import type { Compared } from "./compare-part.ts";

export interface Overlay {
  readonly element: HTMLElement;
  update(compared: Compared): void;
}

/** Room around the outlines, as a share of their extent. */
const MARGIN_SHARE = 0.04;
/** The cross of the spin axis, as a share of the extent. */
const CROSS_SHARE = 0.03;

/** The outlines of all bars over each other, true arcs, the spin axis of all in one place. */
export function createOutlineOverlay({ strings }: PartContext): Overlay {
  const headingId = freshId("outlines");
  // Under all lines: it would pale those that run across it.
  const plate = svg("path", { class: "overlay-plate", "fill-rule": "evenodd" });
  const shapes = svg("g");
  const cross = svg("path", { class: "axis-cross" });
  const picture = svg("svg", { class: "overlay-picture", role: "img" });
  picture.append(plate, shapes, cross);
  const legend = el("ul", { class: "legend" });
  const none = el("p", { class: "soft" }, strings.outlinesNone);
  return {
    element: el(
      "section",
      { "aria-labelledby": headingId },
      el("h2", { id: headingId }, strings.outlines),
      none,
      picture,
      legend,
    ),
    update: ({ result: { outlines }, bars, units }) => {
      setHidden(none, outlines !== null);
      setHidden(picture, outlines === null);
      updateLegend(legend, bars);
      if (!outlines) return;
      const [x0, y0, x1, y1] = outlines.boundsMm;
      const margin = MARGIN_SHARE * Math.max(x1 - x0, y1 - y0);
      const box = [x0 - margin, -y1 - margin, x1 - x0 + 2 * margin, y1 - y0 + 2 * margin];
      const arm = CROSS_SHARE * Math.max(x1 - x0, y1 - y0);
      const titles = bars.map(({ title }) => title).join(", ");
      setAttributes(picture, {
        viewBox: box.map((side) => Number(side.toFixed(3))).join(" "),
        "aria-label": fill(
          strings.outlinesOf,
          titles,
          lengthText(x1 - x0, units),
          lengthText(y1 - y0, units),
        ),
      });
      setAttributes(plate, { d: outlines.paths[0] ?? "" });
      setAttributes(cross, { d: `M${-arm} 0H${arm}M0 ${-arm}V${arm}` });
      // The reference is drawn last, so that it is not covered where bars are alike.
      const drawn = bars.map(({ style }, i) => ({
        style,
        path: outlines.paths[i] ?? null,
        isReference: i === 0,
      }));
      keepChildren(
        shapes,
        drawn.reverse(),
        () => svg("path"),
        (element, { style, path, isReference }) =>
          setAttributes(element, {
            class: `series ${seriesClass(style)}${isReference ? " series-reference" : ""}`,
            d: path ?? "",
          }),
      );
    },
  };
}

/** Which line is which, by its dashes as well as its colour. */
export function updateLegend(legend: HTMLElement, bars: Compared["bars"]): void {
  keepChildren(
    legend,
    bars,
    () => el("li", {}, el("span", { class: "legend-line" }), el("span", { class: "legend-name" })),
    (item, { title, style }) => {
      const [line, name] = item.children;
      if (line && line.getAttribute("data-style") !== String(style)) {
        setAttributes(line, { "data-style": style });
        line.replaceChildren(seriesSample(style));
      }
      if (name) setText(name, title);
    },
  );
}
