import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { createAxes } from "../../../webview/page/chart/axes.ts";
import { readOn } from "../../../webview/page/chart/places.ts";
import { el, freshId, setAttributes, setHidden, setText, svg } from "../../../webview/page/dom.ts";
import { observedSize } from "../../../webview/page/observed-size.ts";
import { speedText, speedUnit } from "../../../webview/page/units.ts";
import type { ShownBite } from "../../protocol.ts";
import { fill } from "../../strings.ts";
import { within } from "../drawing/gestures.ts";
import { chosenIndex, type PageContext, type PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import { biteSentence, targetText } from "./bite-text.ts";
import { type ChartModel, CURVE_NAMES, chartModel, depthOf } from "./chart-model.ts";

const HEIGHT_PX = 230;

/** The chart as one control to read along: a slider over the closing speeds, its value told in words. */
export function createChart(context: PageContext): Part {
  const { strings } = context;
  const axes = createAxes();
  const curves = CURVE_NAMES.map((name) => ({ name, path: svg("path", { class: `curve curve-${name}` }) }));
  const band = svg("path", { class: "chart-band" });
  const clean = createSpeedMark("clean", 9);
  const teeth = createSpeedMark("teeth-only", 23);
  const chosen = svg("path", { class: "chart-chosen" });
  const reader = createReader();
  const picture = svg("svg", { class: "chart-picture", height: HEIGHT_PX, "aria-hidden": "true" });
  picture.append(axes.element, band, ...curves.map(({ path }) => path));
  picture.append(clean.element, teeth.element, chosen, reader.element);
  const keysId = freshId("bite-keys");
  const keys = el("p", { id: keysId, class: "visually-hidden" }, strings.biteKeys);
  const slider = { tabindex: 0, role: "slider", "aria-label": strings.bite, "aria-describedby": keysId };
  const element = el("div", { class: "chart", ...slider }, picture, keys);
  let model: ChartModel | null = null;

  const room = observedSize(element, () => context.change({}));
  element.addEventListener("pointermove", (event) => {
    if (model) context.change(read(model.nearest(within(element, event).x)));
  });
  element.addEventListener("pointerleave", () => context.change({ reading: null }));
  element.addEventListener("blur", () => context.change({ reading: null }));
  element.addEventListener("focus", () => {
    if (element.matches(":focus-visible")) context.change(read(chosenIndex(context.state())));
  });
  element.addEventListener("keydown", (event) => {
    const state = context.state();
    const next = readOn(event.key, chosenIndex(state), state.view?.bite?.curve.length ?? 0);
    if (next === null) return;
    event.preventDefault();
    context.change(read(next));
  });

  return {
    element,
    update: (state) => {
      const { view, units, reading } = state;
      if (!view?.bite || view.bite.curve.length === 0) return;
      const size = { width: Math.max(120, room().width), height: HEIGHT_PX };
      model = chartModel(view.bite, units, size);
      setAttributes(picture, { width: size.width });
      axes.update(
        { ...model, xTicks: model.speedTicks, yTicks: model.depthTicks },
        fill(strings.closingSpeed, speedUnit(units)),
        fill(strings.biteDepth, units),
      );
      for (const { name, path } of curves) setAttributes(path, { d: model.curves[name] });
      setAttributes(band, { d: model.band });
      const upTo = (text: string, mPerS: number | null) => fill(text, speedText(mPerS ?? 0, units));
      clean.update(model, model.cleanAt, upTo(strings.cleanUpTo, view.bite.cleanMPerS));
      teeth.update(model, model.teethOnlyAt, upTo(strings.teethUpTo, view.bite.teethOnlyMPerS));
      const at = view.bite.curve[chosenIndex(state)];
      setAttributes(chosen, { d: at ? `M${model.xOf(at).toFixed(2)} ${model.top - 1}l-5 -8h10Z` : "" });
      reader.update(model, view.bite, reading);
      setAttributes(element, {
        "aria-label": `${strings.bite}. ${targetText(view.bite.target, units, strings)}`,
        ...sliderValue(view.bite, chosenIndex(state), units, context),
      });
    },
  };
}

function sliderValue({ curve }: ShownBite, reading: number, units: UnitSystem, { strings }: PageContext) {
  const point = curve[reading];
  return {
    "aria-valuemin": curve[0]?.closingMPerS ?? 0,
    "aria-valuemax": curve.at(-1)?.closingMPerS ?? 0,
    "aria-valuenow": point?.closingMPerS ?? 0,
    "aria-valuetext": point ? biteSentence(point, units, strings) : null,
  };
}

function read(index: number): Pick<PageState, "reading" | "lastRead"> {
  return { reading: index, lastRead: index };
}

/** About the width of a sign of the labels. */
const SIGN_PX = 6.7;

/** A speed up to which something holds: a line across the chart with its words beside it, at a height of their own. */
function createSpeedMark(name: string, below: number) {
  const line = svg("path", { class: `${name}-line` });
  const back = svg("rect", { class: "speed-back", height: 13 });
  const label = svg("text", { class: "speed-label" });
  const element = svg("g", { class: name }, line, back, label);
  return {
    element,
    update: ({ left, right, top, bottom }: ChartModel, at: number | null, text: string) => {
      setHidden(element, at === null);
      if (at === null) return;
      const room = text.length * SIGN_PX + 10;
      const onLeft = at + room > right && at - room > left;
      // Each begins at its words, so that it runs through no other's.
      const start = top + below - 9;
      setAttributes(line, { d: `M${at} ${start}V${bottom}M${at - 4} ${start}h8` });
      // It hides the line of another speed that would run through the words.
      const width = text.length * SIGN_PX;
      setAttributes(back, { x: onLeft ? at - 7 - width : at + 7, y: top + below - 10, width });
      setAttributes(label, {
        x: at + (onLeft ? -7 : 7),
        y: top + below,
        "text-anchor": onLeft ? "end" : "start",
      });
      setText(label, text);
    },
  };
}

function createReader() {
  const line = svg("path", { class: "reader-line" });
  const span = svg("path", { class: "reader-span" });
  const dots = CURVE_NAMES.map((name) => ({
    name,
    dot: svg("circle", { class: `reader-dot dot-${name}`, r: 3.5 }),
  }));
  const element = svg("g", { class: "reader" }, line, span, ...dots.map(({ dot }) => dot));
  return {
    element,
    update: ({ xOf, yOf, top, bottom }: ChartModel, { curve }: ShownBite, reading: number | null) => {
      const point = reading === null ? undefined : curve[reading];
      setHidden(element, point === undefined);
      if (!point) return;
      const x = xOf(point);
      setAttributes(line, { d: `M${x} ${top}V${bottom}` });
      setAttributes(span, { d: `M${x} ${yOf(point.ninetiethMm)}V${yOf(point.tenthMm)}` });
      for (const { name, dot } of dots) {
        const depth = depthOf(point, name);
        setHidden(dot, depth === null);
        setAttributes(dot, { cx: x, cy: yOf(depth ?? 0) });
      }
    },
  };
}
