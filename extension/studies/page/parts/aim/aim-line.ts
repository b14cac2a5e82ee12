/** The line of bars of two goals: a chart to choose on, and the same as a table behind it. */
import { number, type UnitSystem } from "../../../../../geometry/figures/present.ts";
import { fill } from "../../../../webview/fill.ts";
import { el, setHidden } from "../../../../webview/page/dom.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { AimResult, AimSoFar, GoalTitle } from "../../../worker/aim-job.ts";
import { createFrontChart } from "../../chart/front-chart.ts";
import type { FrontChartData } from "../../chart/front-chart-model.ts";
import { goalText } from "./aimed-bar.ts";
import { createRowsTable } from "./rows-table.ts";

export interface AimLineView {
  readonly element: HTMLElement;
  update(result: AimResult, chosen: number, units: UnitSystem): void;
  /** The line as far as it is found. */
  updateSoFar(soFar: AimSoFar, units: UnitSystem): void;
}

export function createAimLine(strings: StudiesStrings, choose: (index: number) => void): AimLineView {
  let told: readonly string[] = [];
  const chart = createFrontChart({
    label: strings.aimLine,
    keys: strings.aimLineKeys,
    describe: (index) => told[index] ?? "",
    choose,
  });
  const table = createRowsTable();
  const fold = el("details", { class: "fold" }, el("summary", {}, strings.aimLineTable), table.element);
  return {
    element: el("div", {}, el("p", { class: "soft" }, strings.aimLineMeaning), chart.element, fold),
    update: ({ goals, bars }, chosen, units) => {
      const heads = goals.map((title) => goalText(title, strings));
      told = bars.map((bar, i) =>
        fill(
          strings.aimBarOfLine,
          i + 1,
          bars.length,
          bar.goals.map((goal, k) => `${heads[k]} ${goal.afterText[units]}`).join(", "),
        ),
      );
      chart.update(
        chartData(
          goals,
          bars.map((bar) => bar.goals.map(({ after }) => after)),
          bars[0]?.goals.map(({ before }) => before) ?? [],
          units,
          strings,
        ),
        chosen,
      );
      setHidden(fold, false);
      table.update(
        strings.aimLineTable,
        [strings.aimBar, ...heads, ...(bars[0]?.lets.map(({ name }) => name) ?? [])],
        bars.map((bar, i) => [
          `${i + 1}`,
          ...bar.goals.map(({ afterText }) => afterText[units]),
          ...bar.lets.map(({ to }) => to),
        ]),
        chosen,
      );
    },
    updateSoFar: ({ titles, goals }, units) => {
      told = [];
      setHidden(fold, true);
      chart.update(chartData(titles, goals, [], units, strings), null);
    },
  };
}

function chartData(
  titles: readonly GoalTitle[],
  values: readonly (readonly (number | null)[])[],
  now: readonly (number | null)[],
  units: UnitSystem,
  strings: StudiesStrings,
): FrontChartData {
  const [x, y] = titles;
  const pointOf = ([a, b]: readonly (number | null)[]): readonly [number, number][] =>
    x && y && a != null && b != null ? [[a / x.perUnit[units], b / y.perUnit[units]]] : [];
  return {
    xTitle: axisTitle(x, units, strings),
    yTitle: axisTitle(y, units, strings),
    points: values.flatMap(pointOf),
    now: pointOf(now)[0] ?? null,
  };
}

function axisTitle(title: GoalTitle | undefined, units: UnitSystem, strings: StudiesStrings): string {
  const unit = title?.unit[units] ?? "";
  return unit === "" ? goalText(title, strings) : `${goalText(title, strings)}, ${unit}`;
}

/** What a search for one goal has found by now, in a line. */
export function soFarText(
  { titles, lets, goals, values, isFeasible }: AimSoFar,
  units: UnitSystem,
  strings: StudiesStrings,
): string {
  const [best] = goals;
  const [at] = values;
  if (best === undefined || at === undefined) return "";
  const figures = titles.map((title, i) => {
    const unit = title.unit[units];
    return `${title.label} ${number((best[i] ?? 0) / title.perUnit[units], 5)}${unit === "" ? "" : ` ${unit}`}`;
  });
  const places = lets.map(
    ({ name, unit }, i) => `${name} = ${number(at[i] ?? 0, 5)}${unit === null ? "" : ` ${unit}`}`,
  );
  const text = fill(strings.aimBestSoFar, figures.join(", "), places.join(", "));
  return isFeasible ? text : `${text} ${strings.aimLimitsNotKept}`;
}
