import { scaleLinear } from "d3-scale";
import { createAxes } from "../../../webview/page/chart/axes.ts";
import { CHART_MARGIN } from "../../../webview/page/chart/places.ts";
import { keepChildren, setAttributes, setHidden, svg } from "../../../webview/page/dom.ts";

export interface HistogramBin {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

export interface HistogramData {
  readonly bins: readonly HistogramBin[];
  /** A line across the chart; `null` for none. */
  readonly limit: number | null;
  readonly xTitle: string;
  readonly yTitle: string;
  /** All of it in words. */
  readonly label: string;
}

const [WIDTH, HEIGHT] = [560, 200];

/** Bars of how often, with a limit. Its numbers stand in a table as well: the picture is for the eye. */
export function createHistogram(): { readonly element: SVGSVGElement; update(data: HistogramData): void } {
  const axes = createAxes();
  const bars = svg("g");
  const limitLine = svg("path", { class: "histogram-limit" });
  const picture = svg("svg", { class: "histogram", role: "img", viewBox: `0 0 ${WIDTH} ${HEIGHT}` });
  picture.append(axes.element, bars, limitLine);
  return {
    element: picture,
    update: ({ bins, limit, xTitle, yTitle, label }) => {
      const { left, top } = CHART_MARGIN;
      const [right, bottom] = [WIDTH - CHART_MARGIN.right, HEIGHT - CHART_MARGIN.bottom];
      const last = bins.at(-1)?.to ?? 0;
      const across = scaleLinear([0, last > 0 ? last : 1], [left, right]);
      const up = scaleLinear([0, Math.max(1, ...bins.map(({ count }) => count))], [bottom, top]).nice(4);
      const [xFormat, yFormat] = [across.tickFormat(8), up.tickFormat(4)];
      axes.update(
        {
          left,
          right,
          top,
          bottom,
          xTicks: across.ticks(8).map((at) => ({ at: across(at), text: xFormat(at) })),
          yTicks: up.ticks(4).map((at) => ({ at: up(at), text: yFormat(at) })),
        },
        xTitle,
        yTitle,
      );
      setAttributes(picture, { "aria-label": label });
      keepChildren(
        bars,
        bins,
        () => svg("rect", { class: "histogram-bar" }),
        (bar, { from, to, count }) =>
          setAttributes(bar, {
            x: across(from),
            y: up(count),
            width: Math.max(0, across(to) - across(from)),
            height: Math.max(0, bottom - up(count)),
          }),
      );
      const isInSight = limit !== null && limit <= last;
      setHidden(limitLine, !isInSight);
      if (isInSight) setAttributes(limitLine, { d: `M${across(limit)} ${bottom}V${top}` });
    },
  };
}
