/** A value of the file varied over a range: which lets and figure, the way to start and to stop, a chart, a table. */
import type { UnitSystem } from "../../../../../geometry/figures/present.ts";
import { fill } from "../../../../webview/fill.ts";
import { el, freshId, keepChildren, setHidden, setText } from "../../../../webview/page/dom.ts";
import type { StudyDocument } from "../../../protocol.ts";
import type { MovableResult } from "../../../worker/movable-job.ts";
import type { VaryResult } from "../../../worker/vary-job.ts";
import { createLineChart } from "../../chart/line-chart.ts";
import type { PartContext, StudiesState, StudyPart, StudyView } from "../../part.ts";
import { updateLegend } from "../compare/outline-overlay.ts";
import { type Asked, askedOf, wordsOf } from "./asked.ts";
import { createVaryForm } from "./vary-form.ts";
import { toldAt, varyPicture } from "./vary-picture.ts";

export const varyPart: StudyPart = {
  name: "vary",
  title: ({ vary }) => vary,
  create: createVaryPart,
};

function createVaryPart(context: PartContext): StudyView {
  const { strings, jobs } = context;
  let asked = askedOf(context.kept());
  let lookedUp: StudyDocument | null = null;
  let choices: MovableResult | null = null;
  let result: VaryResult | null = null;
  /** Of which text the result is, and what is wrong or under way. */
  let of: StudyDocument | null = null;
  let said: string | null = null;

  const change = (next: Asked) => {
    asked = next;
    context.keep(asked);
    context.redraw();
  };
  const ended = (next: VaryResult | null, text: string | null) => {
    if (next) result = next;
    said = text;
    if (text === null) context.announce(strings.varyDone);
    context.redraw();
  };
  const start = () => {
    const { document } = context.state();
    if (!document) return;
    const { text, variant, settings } = document;
    of = document;
    said = strings.working;
    jobs.run(
      "vary",
      { text, variant, settings, ...wordsOf(asked) },
      {
        result: (next) => ended(next, null),
        refused: (reason) => ended(null, reason),
        fault: () => ended(null, strings.fault),
        progress: ({ done, total }) => {
          said = fill(strings.workingShare, Math.round((100 * done) / total));
          context.redraw();
        },
      },
    );
    context.redraw();
  };
  const stop = () => {
    jobs.cancel();
    said = null;
    context.redraw();
  };
  const lookUp = (document: StudyDocument) => {
    // What is under way is of an older text, but it was asked for: it is marked when it is there.
    if (lookedUp === document || jobs.isRunning()) return;
    lookedUp = document;
    const { text, variant, settings } = document;
    jobs.runNext(
      "movable",
      { text, variant, settings },
      {
        result: (next) => {
          choices = next;
          const [first] = next.lets;
          if (first && !next.lets.some(({ name }) => name === asked.first.name))
            asked = { ...asked, first: { ...asked.first, name: first.name, from: first.from, to: first.to } };
          context.redraw();
        },
        refused: (reason) => ended(null, reason),
        fault: () => ended(null, strings.fault),
      },
    );
  };

  const form = createVaryForm(strings, change, start);
  const status = el("p", { class: "study-status", role: "status" });
  const stopButton = el("button", { type: "button", class: "main-action" }, strings.stop);
  stopButton.addEventListener("click", stop);
  const save = el("button", { type: "button", class: "link" }, strings.saveCsv);
  save.addEventListener("click", () => {
    if (!result || !of) return;
    const name = `${of.fileName.replace(/\.bar$/, "")}-${result.lets.map((one) => one.name).join("-")}.csv`;
    void context.saveFile({ name, kind: strings.csvKind, summary: strings.csvSummary, content: result.csv });
  });
  const shown = createShown(strings);
  const headingId = freshId("vary");
  return {
    element: el(
      "section",
      { class: "study vary", "aria-labelledby": headingId },
      el("h2", { id: headingId, class: "visually-hidden" }, strings.vary),
      el("p", { class: "soft" }, strings.varyMeaning),
      form.element,
      el("div", { class: "fields" }, status, stopButton),
      shown.element,
      save,
    ),
    update: ({ document }: StudiesState) => {
      if (!document) return;
      lookUp(document);
      if (choices) form.update(asked, choices);
      setHidden(form.element, choices === null || choices.lets.length === 0);
      const text = said ?? noteOf(choices, result, of, document, strings);
      setText(status, text);
      setHidden(status, text === "");
      setHidden(stopButton, !jobs.isRunning());
      setHidden(save, result === null);
      shown.update(result, document.units);
    },
  };
}

function noteOf(
  choices: MovableResult | null,
  result: VaryResult | null,
  of: StudyDocument | null,
  document: StudyDocument,
  strings: PartContext["strings"],
): string {
  if (choices?.lets.length === 0) return strings.varyNoLets;
  if (!result || !of) return "";
  return of.text === document.text && of.variant === document.variant ? "" : strings.varyStale;
}

/** The chart, what its lines mean, and the table behind it. */
function createShown(strings: PartContext["strings"]) {
  const chart = createLineChart({
    label: strings.varyChart,
    keys: strings.chartKeys,
    describe: (data, index) => toldAt(data, index, strings),
  });
  const legend = el("ul", { class: "legend" });
  const caption = el("caption", { class: "visually-hidden" });
  const head = el("tr");
  const body = el("tbody");
  const table = el("table", { class: "comparison" }, caption, el("thead", {}, head), body);
  const room = el(
    "div",
    { class: "table-room", tabindex: 0, role: "region", "aria-label": strings.varyTable },
    table,
  );
  const fold = el(
    "details",
    { class: "fold" },
    el("summary", {}, strings.varyTable),
    el("p", { class: "soft" }, strings.varyKept),
    room,
  );
  const element = el("div", { class: "vary-shown" }, legend, chart.element, fold);
  let drawn: readonly [VaryResult | null, UnitSystem] | null = null;
  return {
    element,
    update: (result: VaryResult | null, units: UnitSystem) => {
      if (drawn?.[0] === result && drawn[1] === units) return;
      drawn = [result, units];
      const picture = result && varyPicture(result, units, strings);
      setHidden(element, !picture);
      if (!picture) return;
      chart.update(picture.chart);
      setText(caption, picture.figure);
      // One line alone is named by the axis.
      const { series } = picture.chart;
      setHidden(legend, series.length < 2);
      updateLegend(
        legend,
        series.length < 2 ? [] : series.map(({ name: title, style }) => ({ title, style })),
      );
      keepChildren(head, picture.columns, () => el("th", { scope: "col" }), setText);
      keepChildren(body, picture.rows, () => el("tr"), updateRow);
    },
  };
}

function updateRow(row: HTMLElement, cells: readonly string[]): void {
  keepChildren(row, cells, (i) => (i === 0 ? el("th", { scope: "row" }) : el("td")), setText);
}
