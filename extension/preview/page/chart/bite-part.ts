/** Bite against closing speed: the chart, what is read from it, and the table behind it. */

import { el, freshId, setHidden, setText } from "../../../webview/page/dom.ts";
import { createApproachPart } from "../approach/approach-part.ts";
import { createFold } from "../fold.ts";
import type { PageContext, PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import { createStrikeList } from "../strikes/strike-list.ts";
import { createBiteTable } from "./bite-table.ts";
import { biteSentence, limitsText, targetText } from "./bite-text.ts";
import { createChart } from "./chart.ts";
import { createLegend } from "./legend.ts";

export function createBitePart(context: PageContext): Part {
  const { strings } = context;
  const headingId = freshId("bite");
  const target = el("span", { class: "bite-target" });
  const limits = el("span", { class: "bite-limits" });
  const readout = el("p", { class: "chart-readout", "aria-hidden": "true" });
  const none = el("p", { class: "soft" }, strings.biteNone);
  const chart = createChart(context);
  const table = createBiteTable(context);
  const fold = createFold(context, "biteTable", strings.biteTable, table.element);
  const strikes = createStrikeList(context);
  const approach = createApproachPart(context);
  const shown = el(
    "div",
    {},
    el("p", { class: "soft" }, target, " ", limits),
    createLegend(strings),
    chart.element,
    readout,
    el("div", { class: "folds" }, strikes.element, approach.element, fold.element),
  );
  return {
    element: el(
      "section",
      { class: "bite", "aria-labelledby": headingId },
      el("h2", { id: headingId }, strings.bite),
      none,
      shown,
    ),
    update: (state) => {
      const there = (state.view?.bite?.curve.length ?? 0) > 0;
      setHidden(none, there);
      setHidden(shown, !there);
      fold.update(state);
      const bite = state.view?.bite;
      if (!there || !bite) return;
      setText(target, targetText(bite.target, state.units, strings));
      setText(limits, limitsText(bite, state.units, strings));
      chart.update(state);
      table.update(state);
      strikes.update(state);
      approach.update(state);
      setText(readout, readText(state, context));
    },
  };
}

/** The point that is being read, else what can be said of the whole curve. */
function readText({ view, reading, units }: PageState, { strings }: PageContext): string {
  const point = reading === null ? undefined : view?.bite?.curve[reading];
  if (point) return biteSentence(point, units, strings);
  return strings.idealMeaning;
}
