import { keepChildren, setAttributes, setText, svg } from "../dom.ts";
import type { AxesModel } from "./places.ts";

export interface Axes {
  readonly element: SVGGElement;
  update(model: AxesModel, xTitle: string, yTitle: string): void;
}

/** Grid, base line, ticks and titles of a chart. */
export function createAxes(): Axes {
  const lines = svg("path", { class: "chart-grid" });
  const base = svg("path", { class: "chart-base" });
  const across = svg("g", { class: "chart-ticks" });
  const up = svg("g", { class: "chart-ticks" });
  const acrossTitle = svg("text", { class: "chart-title", "text-anchor": "end" });
  const upTitle = svg("text", { class: "chart-title", "text-anchor": "end" });
  const tick = () => svg("text");
  return {
    element: svg("g", {}, lines, base, across, up, acrossTitle, upTitle),
    update: ({ left, right, top, bottom, xTicks, yTicks }, xTitle, yTitle) => {
      setAttributes(lines, { d: yTicks.map(({ at }) => `M${left} ${at}H${right}`).join("") });
      setAttributes(base, {
        d: `M${left} ${bottom}H${right}${xTicks.map(({ at }) => `M${at} ${bottom}v4`).join("")}`,
      });
      keepChildren(across, xTicks, tick, (label, { at, text }) => {
        setAttributes(label, { x: at, y: bottom + 16, "text-anchor": "middle" });
        setText(label, text);
      });
      keepChildren(up, yTicks, tick, (label, { at, text }) => {
        setAttributes(label, { x: left - 6, y: at + 4, "text-anchor": "end" });
        setText(label, text);
      });
      setAttributes(acrossTitle, { x: right, y: bottom + 32 });
      setText(acrossTitle, xTitle);
      setAttributes(upTitle, { x: top, y: 11, transform: `rotate(-90) translate(${-2 * top} 0)` });
      setText(upTitle, yTitle);
    },
  };
}
