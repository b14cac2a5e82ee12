import { createAxes } from "../../../webview/page/chart/axes.ts";
import { polyline, readOn } from "../../../webview/page/chart/places.ts";
import { el, freshId, keepChildren, setAttributes, setHidden, svg } from "../../../webview/page/dom.ts";
import { observedSize } from "../../../webview/page/observed-size.ts";
import { type FrontChartData, type FrontChartModel, frontChartModel } from "./front-chart-model.ts";

const HEIGHT_PX = 260;
const LEAST_WIDTH_PX = 140;

export interface FrontChartOptions {
  readonly label: string;
  /** What the keys do, for those who do not see the chart. */
  readonly keys: string;
  /** A point in words. */
  describe(index: number): string;
  choose(index: number): void;
}

/** Bars by two figures as one control: a slider along the line, the chosen point is the bar that is shown. */
export interface FrontChart {
  readonly element: HTMLElement;
  /** @param chosen `null` while there is nothing to choose from */
  update(data: FrontChartData, chosen: number | null): void;
}

export function createFrontChart({ label, keys, describe, choose }: FrontChartOptions): FrontChart {
  const axes = createAxes();
  const line = svg("path", { class: "front-line" });
  const now = svg("path", { class: "front-now" });
  const dots = svg("g");
  const picture = svg("svg", { class: "chart-picture", height: HEIGHT_PX, "aria-hidden": "true" });
  picture.append(axes.element, line, now, dots);
  const keysId = freshId("front-keys");
  const chart = el("div", { class: "chart front", "aria-label": label, "aria-describedby": keysId }, picture);
  let data: FrontChartData | null = null;
  let model: FrontChartModel | null = null;
  let chosen: number | null = null;

  const draw = () => {
    if (!data) return;
    const width = Math.max(LEAST_WIDTH_PX, room().width);
    model = frontChartModel(data, { width, height: HEIGHT_PX });
    setAttributes(picture, { width });
    axes.update(model, data.xTitle, data.yTitle);
    setAttributes(line, { d: polyline(model.places) });
    setHidden(now, model.now === null);
    const [x, y] = model.now ?? [0, 0];
    setAttributes(now, { d: `M${x - 5} ${y}h10M${x} ${y - 5}v10` });
    keepChildren(
      dots,
      model.places,
      () => svg("circle"),
      (dot, [cx, cy], i) =>
        setAttributes(dot, {
          class: i === chosen ? "front-dot chosen" : "front-dot",
          cx,
          cy,
          r: i === chosen ? 6 : 4,
        }),
    );
    drawSlider(data.points.length);
  };
  /** A slider wants a value: without one the chart is a picture. */
  const drawSlider = (count: number) => {
    const isChoice = chosen !== null && count > 0;
    setAttributes(chart, {
      role: isChoice ? "slider" : "img",
      tabindex: isChoice ? 0 : null,
      "aria-valuemin": isChoice ? 1 : null,
      "aria-valuemax": isChoice ? count : null,
      "aria-valuenow": chosen === null || !isChoice ? null : chosen + 1,
      "aria-valuetext": chosen === null || !isChoice ? null : describe(chosen),
    });
  };

  const room = observedSize(chart, draw);
  chart.addEventListener("click", (event) => {
    if (!model || chosen === null) return;
    const { left, top } = chart.getBoundingClientRect();
    choose(model.nearest(event.clientX - left, event.clientY - top));
  });
  chart.addEventListener("keydown", (event) => {
    if (chosen === null) return;
    const next = readOn(event.key, chosen, data?.points.length ?? 0);
    if (next === null) return;
    event.preventDefault();
    choose(next);
  });

  return {
    element: el("div", {}, chart, el("p", { id: keysId, class: "visually-hidden" }, keys)),
    update: (next, index) => {
      data = next;
      chosen = index;
      draw();
    },
  };
}
