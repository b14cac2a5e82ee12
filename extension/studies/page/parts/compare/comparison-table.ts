import {
  onlyDifferent,
  type TableCell,
  type TableRow,
  type TableSection,
} from "../../../../../geometry/files/comparison-rows.ts";
import { fill } from "../../../../webview/fill.ts";
import {
  el,
  freshId,
  keepChildren,
  setAttributes,
  setHidden,
  setText,
} from "../../../../webview/page/dom.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { PartContext } from "../../part.ts";
import type { ChangeChoices } from "./choices.ts";
import type { Compared } from "./compare-part.ts";
import type { Overlay } from "./outline-overlay.ts";

/** Sections that stand behind the chart of the bite. */
const BITE_SECTIONS: readonly string[] = ["deepest", "mean"];

/** The figures and requirements of all bars, with what differs. */
export function createComparisonTable({ strings, saveFile }: PartContext, change: ChangeChoices): Overlay {
  const box = el("input", { type: "checkbox" });
  box.addEventListener("change", () => change({ onlyDifferent: box.checked }));
  const save = el("button", { type: "button", class: "main-action" }, strings.saveCsv);
  save.addEventListener("click", () => {
    if (!drawn) return;
    const { csv, csvName } = drawn.result;
    const { csvKind: kind, compareSummary: summary } = strings;
    void saveFile({ name: `${csvName}.csv`, kind, summary, content: csv });
  });
  const headingId = freshId("figures");
  const nothing = el("p", { class: "soft" }, strings.nothingDiffers);
  const table = createTable(strings);
  let drawn: Pick<Compared, "result" | "units" | "choices"> | null = null;
  return {
    element: el(
      "section",
      { class: "compared-figures", "aria-labelledby": headingId },
      el(
        "div",
        { class: "heading" },
        el("h2", { id: headingId }, strings.figures),
        el("div", { class: "controls" }, el("label", { class: "switch" }, box, strings.onlyDifferent), save),
      ),
      nothing,
      table.element,
    ),
    update: ({ result, units, choices }) => {
      if (drawn?.result === result && drawn.units === units && drawn.choices === choices) return;
      drawn = { result, units, choices };
      box.checked = choices.onlyDifferent;
      const all = result.tables[units];
      const { columns, sections } = choices.onlyDifferent ? onlyDifferent(all) : all;
      const shown = sections.filter(({ key }) => !BITE_SECTIONS.includes(key));
      setHidden(nothing, shown.length > 0);
      setHidden(table.element, shown.length === 0);
      table.update(columns, shown, fill(strings.comparedFigures, columns[0] ?? ""));
    },
  };
}

interface Table {
  readonly element: HTMLElement;
  update(columns: readonly string[], sections: readonly TableSection[], caption: string): void;
}

/** A table of sections, the reference in the first column of values. */
export function createTable(strings: StudiesStrings): Table {
  const caption = el("caption", { class: "visually-hidden" });
  const head = el("tr");
  const table = el("table", { class: "comparison" }, caption, el("thead", {}, head));
  const room = el("div", { class: "table-room", tabindex: 0, role: "region" }, table);
  return {
    element: room,
    update: (columns, sections, title) => {
      setText(caption, title);
      setAttributes(room, { "aria-label": title });
      keepChildren(
        head,
        [strings.figure, ...columns],
        () => el("th", { scope: "col" }),
        (cell, text, i) => setText(cell, i === 1 ? `${text} (${strings.referenceMark})` : text),
      );
      keepChildren(table, sections, createSection, (body, section) =>
        updateSection(body, section, columns.length, strings),
      );
    },
  };
}

function createSection(): HTMLTableSectionElement {
  const title = el("th", { scope: "rowgroup" });
  return el("tbody", {}, el("tr", { class: "section-title" }, title));
}

function updateSection(
  body: HTMLTableSectionElement,
  { title, rows }: TableSection,
  columns: number,
  strings: StudiesStrings,
): void {
  const name = body.querySelector(".section-title th");
  if (name) {
    setText(name, title);
    setAttributes(name, { colspan: columns + 1 });
  }
  keepChildren(body, rows, createRow, (row, data) => updateRow(row, data, strings));
}

function createRow(): HTMLTableRowElement {
  return el("tr", {}, el("th", { scope: "row" }));
}

function updateRow(
  row: HTMLTableRowElement,
  { label, meaning, cells }: TableRow,
  strings: StudiesStrings,
): void {
  const [name] = row.children;
  if (name) {
    setText(name, label);
    setAttributes(name, { title: meaning === "" ? null : meaning });
  }
  keepChildren(row, cells, createCell, (cell, data, i) => updateCell(cell, data, i > 0, strings));
}

function createCell(): HTMLTableCellElement {
  return el("td", {}, el("span", { class: "cell-value" }), el("span", { class: "cell-change" }));
}

function updateCell(
  cell: HTMLTableCellElement,
  { value, difference, percent, verdict }: TableCell,
  isCompared: boolean,
  strings: StudiesStrings,
): void {
  const [shown, change] = cell.children;
  if (!shown || !change) return;
  const differs = isCompared && verdict !== "same";
  const amount = percent === "" ? difference : percent;
  const told = differs ? [amount, verdictText(verdict, strings)].filter((text) => text !== "") : [];
  setText(shown, value);
  setText(change, told.join(" "));
  setAttributes(change, {
    class: `cell-change${differs && verdict ? ` verdict-${verdict}` : ""}`,
    title: differs && percent !== "" ? difference : null,
  });
  setHidden(change, told.length === 0);
}

/** A sign and a word: colour only helps. */
function verdictText(verdict: TableCell["verdict"], strings: StudiesStrings): string {
  if (verdict === "better") return `▲ ${strings.better}`;
  return verdict === "worse" ? `▼ ${strings.worse}` : "";
}
