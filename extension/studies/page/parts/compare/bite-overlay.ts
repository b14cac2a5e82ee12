import { type UnitSystem, unitOf } from "../../../../../geometry/figures/present.ts";
import { fill } from "../../../../webview/fill.ts";
import { el, freshId, setHidden } from "../../../../webview/page/dom.ts";
import { lengthNumber, speedText } from "../../../../webview/page/units.ts";
import { createLineChart } from "../../chart/line-chart.ts";
import type { LineChartData } from "../../chart/line-chart-model.ts";
import type { PartContext } from "../../part.ts";
import type { ChangeChoices, Choices } from "./choices.ts";
import type { Compared } from "./compare-part.ts";
import { createTable } from "./comparison-table.ts";
import { type Overlay, updateLegend } from "./outline-overlay.ts";

/** The bite of all bars in one chart, with a table behind it. */
export function createBiteOverlay({ strings }: PartContext, change: ChangeChoices): Overlay {
  const headingId = freshId("bite");
  const none = el("p", { class: "soft" }, strings.biteNone);
  const depth = createDepthSwitch(strings, change);
  const legend = el("ul", { class: "legend" });
  let units: UnitSystem = "mm";
  const chart = createLineChart({
    label: strings.bite,
    keys: strings.chartKeys,
    describe: (data, index) => describe(data, index, units, strings),
  });
  const table = createTable(strings);
  const fold = el("details", { class: "fold" }, el("summary", {}, strings.biteTable), table.element);
  const shown = el("div", {}, el("p", { class: "soft" }, strings.biteMeaning), legend, chart.element, fold);
  let drawn: Pick<Compared, "result" | "units" | "choices"> | null = null;
  return {
    element: el(
      "section",
      { class: "bite", "aria-labelledby": headingId },
      el("div", { class: "heading" }, el("h2", { id: headingId }, strings.bite), depth.element),
      none,
      shown,
    ),
    update: (compared) => {
      const { result, choices, bars } = compared;
      if (drawn?.result === result && drawn.units === compared.units && drawn.choices === choices) return;
      drawn = compared;
      ({ units } = compared);
      setHidden(none, result.bite !== null);
      setHidden(shown, result.bite === null);
      depth.update(choices);
      updateLegend(legend, bars);
      const data = chartData(compared, strings);
      if (data) chart.update(data);
      const { columns, sections } = result.tables[units];
      table.update(
        columns,
        sections.filter(({ key }) => key === choices.depth),
        strings.biteTable,
      );
    },
  };
}

function chartData(
  { result: { bite }, choices, bars, units }: Compared,
  strings: PartContext["strings"],
): LineChartData | null {
  if (!bite) return null;
  const [speed, length] = [unitOf("speed", units), unitOf("length", units)];
  const isDeepest = choices.depth === "deepest";
  const curves = isDeepest ? bite.maxMm : bite.meanMm;
  return {
    x: {
      title: fill(strings.closingSpeed, speed.unit),
      values: bite.closingMPerS.map((mPerS) => mPerS / speed.perUnit),
    },
    y: { title: fill(isDeepest ? strings.deepestBite : strings.meanBite, length.unit), fromZero: true },
    series: bars.map(({ title, style }, i) => ({
      name: title,
      style,
      values: bite.closingMPerS.map((_, k) => {
        const mm = curves[i]?.[k];
        return mm === undefined ? null : mm / length.perUnit;
      }),
    })),
  };
}

function describe(
  { x, series }: LineChartData,
  index: number,
  units: UnitSystem,
  strings: PartContext["strings"],
): string {
  const [speed, length] = [unitOf("speed", units), unitOf("length", units)];
  const closing = speedText((x.values[index] ?? 0) * speed.perUnit, units);
  const told = series.map(({ name, values }) => {
    const value = values[index] ?? null;
    const text = value === null ? "–" : `${lengthNumber(value * length.perUnit, units)} ${length.unit}`;
    return fill(strings.readValue, name, text);
  });
  return fill(strings.readAt, closing, told.join(", "));
}

function createDepthSwitch(strings: PartContext["strings"], change: ChangeChoices) {
  const name = freshId("depth");
  const radios = (["deepest", "mean"] as const).map((depth) => {
    const input = el("input", { type: "radio", name, value: depth });
    input.addEventListener("change", () => change({ depth }));
    return { depth, input, label: el("label", {}, input, el("span", {}, strings[depth])) };
  });
  return {
    element: el(
      "fieldset",
      { class: "unit-switch" },
      el("legend", { class: "visually-hidden" }, strings.depthShown),
      ...radios.map(({ label }) => label),
    ),
    update: ({ depth }: Choices) => {
      for (const radio of radios) radio.input.checked = radio.depth === depth;
    },
  };
}
