/** The figures: those that decide first, all others in folding sections, requirements with their verdicts. */

import type { FigureGroup } from "../../../geometry/figures/figure.ts";
import type { ReportRow, ReportSummary, RequirementRow } from "../../../geometry/files/report.ts";
import { OF_EVENT } from "../../../geometry/language/stated-limits.ts";
import { el, freshId, keepChildren, setAttributes, setHidden, setText } from "../../webview/page/dom.ts";
import { valueText } from "../../webview/page/units.ts";
import { fill, type PreviewStrings } from "../strings.ts";
import { createFold, type Fold } from "./fold.ts";
import type { PageContext, PageState } from "./page-state.ts";
import type { Part } from "./part.ts";

/** The figures a builder looks at after each change, in this order. */
const KEY_FIGURES: readonly string[] = [
  "massKg",
  "balanceGrade",
  "tipSpeedMPerS",
  "energyJ",
  "cleanBiteMPerS",
  "maxRadiusMm",
];

export function createKeyFigures({ strings }: PageContext): Part {
  const headingId = freshId("key-figures");
  const list = el("dl", { class: "key-figures" });
  let drawn: Drawn | null = null;
  return {
    element: el(
      "section",
      { "aria-labelledby": headingId },
      el("h2", { id: headingId, class: "visually-hidden" }, strings.keyFigures),
      list,
    ),
    update: (state) => {
      if (isDrawn(drawn, state)) return;
      drawn = state;
      const report = reportOf(state);
      const rows = report ? KEY_FIGURES.flatMap((key) => rowOf(report, key) ?? []) : [];
      keepChildren(list, rows, createKeyFigure, (tile, row) => updateKeyFigure(tile, row, report, strings));
    },
  };
}

function createKeyFigure(): HTMLElement {
  return el(
    "div",
    { class: "key-figure" },
    el("dt"),
    el("dd", { class: "key-value" }, el("span", { class: "value" }), " ", el("span", { class: "unit" })),
    el("dd", { class: "key-note" }),
  );
}

function updateKeyFigure(
  tile: Element,
  row: ReportRow,
  report: ReportSummary | null,
  strings: PreviewStrings,
): void {
  const [name, value, note] = tile.children;
  if (!name || !value || !note || !report) return;
  setText(name, row.label);
  setAttributes(name, { title: row.meaning });
  updateValue(value, row);
  const verdict = verdictOn(row, report);
  const text = verdict ? verdictText(verdict, strings) : noteOf(row, report, strings);
  setText(note, text);
  setAttributes(note, { class: `key-note ${verdict ? verdictClass(verdict) : ""}`.trim() });
  setHidden(note, text === "");
}

/** How a figure stands to what is required of it, by the file or by its event: to what it fails first. */
function verdictOn({ label }: ReportRow, { requirements }: ReportSummary): RequirementRow | undefined {
  const onIt = requirements.filter((row) => row.label === label || row.label === `${label}${OF_EVENT}`);
  return onIt.find(({ holds }) => holds === false) ?? onIt[0];
}

/** What belongs beside a key figure: the imbalance with its heavy side beside the balance grade. */
function noteOf({ key }: ReportRow, report: ReportSummary, strings: PreviewStrings): string {
  if (key !== "balanceGrade") return "";
  const [imbalance, side] = ["imbalanceGMm", "imbalanceDeg"].map((other) => rowOf(report, other));
  if (!imbalance || !side || side.value.text === "–") return "";
  return fill(strings.heavyAt, valueText(imbalance.value), valueText(side.value));
}

function updateValue(cell: Element, { value }: ReportRow): void {
  const [text, unit] = cell.children;
  if (text) setText(text, value.text);
  if (unit) setText(unit, value.unit);
}

// Requirements -----------------------------------------------------------------------------------------------------

function verdictText({ limit, holds }: RequirementRow, strings: PreviewStrings): string {
  const sign = holds === null ? "?" : holds ? "✓" : "✗";
  return `${sign} ${limit}: ${verdictWord(holds, strings)}`;
}

function verdictWord(holds: boolean | null, strings: PreviewStrings): string {
  if (holds === null) return strings.notKnown;
  return holds ? strings.met : strings.notMet;
}

function verdictClass({ holds }: RequirementRow): string {
  if (holds === null) return "verdict-unknown";
  return holds ? "verdict-met" : "verdict-failed";
}

export function createRequirements(context: PageContext): Part {
  const { strings } = context;
  const list = el("dl", { class: "rows" });
  const fold = createFold(context, "requirements", strings.requirements, list);
  let drawn: Drawn | null = null;
  return {
    element: fold.element,
    update: (state) => {
      fold.update(state);
      if (isDrawn(drawn, state)) return;
      drawn = state;
      const rows = reportOf(state)?.requirements ?? [];
      const held = rows.filter(({ holds }) => holds === true).length;
      setHidden(fold.element, rows.length === 0);
      setText(fold.summary, `${strings.requirements}: ${fill(strings.requirementsMet, held, rows.length)}`);
      keepChildren(list, rows, createRequirement, (element, row) => updateRequirement(element, row, strings));
    },
  };
}

function createRequirement(): HTMLElement {
  return el(
    "div",
    { class: "row" },
    el("dt"),
    el("dd", { class: "row-value" }),
    el("dd", { class: "row-note" }),
  );
}

function updateRequirement(element: Element, row: RequirementRow, strings: PreviewStrings): void {
  const [name, value, note] = element.children;
  if (!name || !value || !note) return;
  setText(name, row.label);
  setText(value, row.value);
  setText(note, verdictText(row, strings));
  setAttributes(note, { class: `row-note ${verdictClass(row)}` });
}

// All figures ------------------------------------------------------------------------------------------------------

export function createFigures(context: PageContext): Part {
  const { strings } = context;
  const headingId = freshId("figures");
  const explain = createExplain(context);
  const folds = el("div", { class: "folds" });
  const made = new Map<FigureGroup, { readonly fold: Fold; readonly list: HTMLElement }>();
  let drawn: (Drawn & { toggles: PageState["toggles"] }) | null = null;
  const sectionFor = (group: FigureGroup, title: string) => {
    const list = el("dl", { class: "rows" });
    const section = { list, fold: createFold(context, group, title, list) };
    made.set(group, section);
    folds.append(section.fold.element);
    return section;
  };
  return {
    element: el(
      "section",
      { class: "figures", "aria-labelledby": headingId },
      el("div", { class: "heading" }, el("h2", { id: headingId }, strings.figures), explain.element),
      folds,
    ),
    update: (state) => {
      explain.update(state);
      const same = isDrawn(drawn, state) && drawn?.toggles === state.toggles;
      const { explanations } = state.toggles;
      for (const { group, title, rows } of reportOf(state)?.sections ?? []) {
        const { fold, list } = made.get(group) ?? sectionFor(group, title);
        fold.update(state);
        if (same) continue;
        keepChildren(list, rows, createRow, (element, row) => updateRow(element, row, explanations));
      }
      drawn = state;
    },
  };
}

function createExplain({ strings, state, change }: PageContext): Part {
  const box = el("input", { type: "checkbox" });
  box.addEventListener("change", () =>
    change({ toggles: { ...state().toggles, explanations: box.checked } }),
  );
  return {
    element: el("label", { class: "switch" }, box, strings.explain),
    update: ({ toggles }) => {
      box.checked = toggles.explanations;
    },
  };
}

function createRow(): HTMLElement {
  return el(
    "div",
    { class: "row" },
    el("dt"),
    el("dd", { class: "row-value" }, el("span", { class: "value" }), " ", el("span", { class: "unit" })),
    el("dd", { class: "row-meaning" }),
  );
}

function updateRow(element: Element, row: ReportRow, explained: boolean): void {
  const [name, value, meaning] = element.children;
  if (!name || !value || !meaning) return;
  setText(name, row.label);
  setAttributes(name, { title: row.meaning });
  updateValue(value, row);
  setText(meaning, row.meaning);
  // Out of sight it still belongs to the figure for a screen reader.
  setAttributes(meaning, { class: explained ? "row-meaning" : "row-meaning visually-hidden" });
}

// Shared -----------------------------------------------------------------------------------------------------------

type Drawn = Pick<PageState, "view" | "units">;

function isDrawn(drawn: Drawn | null, { view, units }: Drawn): boolean {
  return drawn !== null && drawn.view === view && drawn.units === units;
}

function reportOf({ view, units }: PageState): ReportSummary | null {
  return view?.reports[units] ?? null;
}

function rowOf({ sections }: ReportSummary, key: string): ReportRow | undefined {
  return sections.flatMap(({ rows }) => rows).find((row) => row.key === key);
}
