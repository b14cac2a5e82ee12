import { createAxes } from "../../../webview/page/chart/axes.ts";
import { readOn } from "../../../webview/page/chart/places.ts";
import {
  el,
  freshId,
  keepChildren,
  setAttributes,
  setHidden,
  setText,
  svg,
} from "../../../webview/page/dom.ts";
import { observedSize } from "../../../webview/page/observed-size.ts";
import { type LineChartData, type LineChartModel, lineChartModel } from "./line-chart-model.ts";

const HEIGHT_PX = 240;
const LEAST_WIDTH_PX = 120;

export interface LineChartOptions {
  readonly label: string;
  /** What the keys do, for those who do not see the chart. */
  readonly keys: string;
  /** The values at one place of the axis in words. */
  describe(data: LineChartData, index: number): string;
}

/** A chart of lines as one control to read along: a slider over the axis, its values told in words below. */
export interface LineChart {
  readonly element: HTMLElement;
  update(data: LineChartData): void;
}

export function createLineChart({ label, keys, describe }: LineChartOptions): LineChart {
  const axes = createAxes();
  const lines = svg("g");
  const readerLine = svg("path", { class: "reader-line" });
  const dots = svg("g");
  const reader = svg("g", { class: "reader" }, readerLine, dots);
  const picture = svg("svg", { class: "chart-picture", height: HEIGHT_PX, "aria-hidden": "true" });
  picture.append(axes.element, lines, reader);
  const keysId = freshId("chart-keys");
  const slider = { tabindex: 0, role: "slider", "aria-label": label, "aria-describedby": keysId };
  const chart = el("div", { class: "chart", ...slider }, picture);
  const readout = el("p", { class: "chart-readout", "aria-hidden": "true" });
  let data: LineChartData | null = null;
  let model: LineChartModel | null = null;
  let reading: number | null = null;
  /** The keys go on from here. */
  let lastRead = 0;

  const read = (index: number | null) => {
    reading = index;
    lastRead = index ?? lastRead;
    drawReading();
  };
  const draw = () => {
    if (!data) return;
    const width = Math.max(LEAST_WIDTH_PX, room().width);
    model = lineChartModel(data, { width, height: HEIGHT_PX });
    const { paths } = model;
    setAttributes(picture, { width });
    axes.update(model, data.x.title, data.y.title);
    keepChildren(
      lines,
      data.series,
      () => svg("path"),
      (path, { style }, i) =>
        setAttributes(path, { class: `series ${seriesClass(style)}`, d: paths[i] ?? "" }),
    );
    drawReading();
  };
  const drawReading = () => {
    if (!data || !model) return;
    const last = data.x.values.length - 1;
    const { xPlaces, yOf, top, bottom } = model;
    const index = reading === null ? null : Math.min(reading, last);
    const at = Math.min(lastRead, last);
    setHidden(reader, index === null);
    setAttributes(chart, {
      "aria-valuemin": data.x.values[0] ?? 0,
      "aria-valuemax": data.x.values[last] ?? 0,
      "aria-valuenow": data.x.values[at] ?? 0,
      "aria-valuetext": describe(data, at),
    });
    setText(readout, index === null ? "" : describe(data, index));
    if (index === null) return;
    const x = xPlaces[index] ?? 0;
    setAttributes(readerLine, { d: `M${x} ${top}V${bottom}` });
    keepChildren(
      dots,
      data.series,
      () => svg("circle", { r: 3.5 }),
      (dot, { style, values }) => {
        const value = values[index] ?? null;
        setHidden(dot, value === null);
        setAttributes(dot, {
          class: `reader-dot ${seriesClass(style)}`,
          cx: x,
          cy: value === null ? 0 : yOf(value),
        });
      },
    );
  };

  const room = observedSize(chart, draw);
  chart.addEventListener("pointermove", (event) => {
    if (model) read(model.nearest(event.clientX - chart.getBoundingClientRect().left));
  });
  chart.addEventListener("pointerleave", () => read(null));
  chart.addEventListener("blur", () => read(null));
  chart.addEventListener("focus", () => {
    if (chart.matches(":focus-visible")) read(lastRead);
  });
  chart.addEventListener("keydown", (event) => {
    const next = readOn(event.key, lastRead, data?.x.values.length ?? 0);
    if (next === null) return;
    event.preventDefault();
    read(next);
  });

  return {
    element: el("div", {}, chart, el("p", { id: keysId, class: "visually-hidden" }, keys), readout),
    update: (next) => {
      data = next;
      draw();
    },
  };
}

/** How many styles of lines there are; past them they come again. */
const STYLES = 8;

/** The class that gives a line its colour and its dashes: the style sheet has one for each. */
export function seriesClass(style: number): string {
  return `series-${style % STYLES}`;
}

/** A line of a style, for a legend. */
export function seriesSample(style: number): SVGSVGElement {
  const sample = svg("svg", { class: "legend-sample", width: 34, height: 12, "aria-hidden": "true" });
  sample.append(svg("path", { class: `series ${seriesClass(style)}`, d: "M1 6H33" }));
  return sample;
}
