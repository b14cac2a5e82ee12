/** What lies under the bar: the grid with its axes, and the scale bar. */
import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { setAttributes, setText, svg } from "../../../webview/page/dom.ts";
import { gridSteps, scaleBarMm, stepText } from "../steps.ts";
import { type Size, toPlane, toScreen, type Viewport } from "../viewport.ts";

export interface Ground {
  readonly grid: SVGGElement;
  readonly scale: SVGGElement;
  update(viewport: Viewport, size: Size, units: UnitSystem): void;
}

export function createGround(): Ground {
  const minor = svg("path", { class: "grid-minor" });
  const major = svg("path", { class: "grid-major" });
  const axes = svg("path", { class: "grid-axes" });
  const bar = svg("path", { class: "scale-line" });
  const label = svg("text", { class: "scale-label" });
  return {
    grid: svg("g", { class: "grid", "aria-hidden": "true" }, minor, major, axes),
    scale: svg("g", { class: "scale", "aria-hidden": "true" }, bar, label),
    update: (viewport, size, units) => {
      const { minorMm, majorEvery } = gridSteps(viewport.pxPerMm, units);
      setAttributes(minor, { d: gridPath(viewport, size, minorMm) });
      setAttributes(major, { d: gridPath(viewport, size, minorMm * majorEvery) });
      const origin = toScreen(viewport, size, { x: 0, y: 0 });
      setAttributes(axes, { d: `M0 ${px(origin.y)}H${size.width}M${px(origin.x)} 0V${size.height}` });
      updateScale(bar, label, viewport, size, units);
    },
  };
}

function gridPath(viewport: Viewport, size: Size, stepMm: number): string {
  const low = toPlane(viewport, size, { x: 0, y: size.height });
  const high = toPlane(viewport, size, { x: size.width, y: 0 });
  const upright = multiples(low.x, high.x, stepMm).map(
    (x) => `M${px(toScreen(viewport, size, { x, y: 0 }).x)} 0V${size.height}`,
  );
  const level = multiples(low.y, high.y, stepMm).map(
    (y) => `M0 ${px(toScreen(viewport, size, { x: 0, y }).y)}H${size.width}`,
  );
  return [...upright, ...level].join("");
}

function multiples(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step);
  const count = Math.max(0, Math.floor(to / step) - first + 1);
  return Array.from({ length: count }, (_, index) => (first + index) * step);
}

/** Lines on the middle of a pixel are sharp. */
function px(value: number): number {
  return Math.round(value) + 0.5;
}

const INSET_PX = 12;

function updateScale(
  bar: SVGPathElement,
  label: SVGTextElement,
  viewport: Viewport,
  size: Size,
  units: UnitSystem,
): void {
  const mm = scaleBarMm(viewport.pxPerMm, units, Math.min(130, size.width / 3));
  const y = size.height - INSET_PX + 0.5;
  const end = INSET_PX + mm * viewport.pxPerMm;
  setAttributes(bar, { d: `M${INSET_PX} ${y - 5}v5H${end.toFixed(1)}v-5` });
  setAttributes(label, { x: INSET_PX + 6, y: y - 5 });
  setText(label, stepText(mm, units));
}
