import { fill } from "../../../../webview/fill.ts";
import {
  el,
  freshId,
  keepChildren,
  setAttributes,
  setHidden,
  setText,
} from "../../../../webview/page/dom.ts";
import type { BarChoice } from "../../../worker/compare-job.ts";
import { seriesSample } from "../../chart/line-chart.ts";
import type { PartContext } from "../../part.ts";
import type { ChangeChoices } from "./choices.ts";
import type { Compared } from "./compare-part.ts";

export interface BarList {
  readonly element: HTMLElement;
  update(compared: Compared, documentUri: string): void;
}

/** The bars there are: a legend of their lines, which are shown, which is the reference, and files to take in or out. */
export function createBarList({ strings, post }: PartContext, change: ChangeChoices): BarList {
  const list = el("ul", { class: "bar-list" });
  const referenceId = freshId("reference");
  const reference = el("select", { id: referenceId });
  const takeIn = el("button", { type: "button", class: "main-action" }, strings.takeIn);
  takeIn.addEventListener("click", () => post({ type: "pickOthers" }));
  let choices: readonly BarChoice[] = [];
  let hidden: readonly string[] = [];
  reference.addEventListener("change", () =>
    change({ reference: choices[reference.selectedIndex]?.key ?? null }),
  );

  const createRow = (index: number): HTMLLIElement => {
    const box = el("input", { type: "checkbox" });
    const out = el("button", { type: "button", class: "link" }, "×");
    const name = el("span", { class: "bar-name" });
    const note = el("span", { class: "bar-note" });
    box.addEventListener("change", () => {
      const key = choices[index]?.key ?? "";
      const others = hidden.filter((one) => one !== key);
      change({ hidden: box.checked ? others : [...others, key] });
    });
    out.addEventListener("click", () => post({ type: "dropOther", uri: choices[index]?.uri ?? "" }));
    return el("li", {}, el("label", { class: "switch" }, box, seriesSample(index), name), note, out);
  };
  const updateRow = (row: HTMLLIElement, choice: BarChoice, isReference: boolean, documentUri: string) => {
    const [box, out] = [row.querySelector("input"), row.querySelector("button")];
    const [name, note] = [row.querySelector(".bar-name"), row.querySelector(".bar-note")];
    if (!box || !out || !name || !note) return;
    box.checked = isReference || !hidden.includes(choice.key);
    box.disabled = isReference;
    setText(name, choice.title);
    const notes = [
      isReference ? strings.referenceMark : "",
      choice.errors > 0 ? fill(strings.errorCount, choice.errors) : "",
    ];
    setText(note, notes.filter((text) => text !== "").join(", "));
    setAttributes(out, {
      "aria-label": fill(strings.takeOut, choice.title),
      title: fill(strings.takeOut, choice.title),
    });
    setHidden(out, choice.uri === documentUri);
  };

  return {
    element: el(
      "fieldset",
      { class: "bars" },
      el("legend", {}, strings.bars),
      list,
      el(
        "div",
        { class: "controls" },
        el("div", { class: "field" }, el("label", { for: referenceId }, strings.reference), reference),
        takeIn,
      ),
    ),
    update: ({ result, choices: chosen }, documentUri) => {
      ({ choices } = result);
      ({ hidden } = chosen);
      const [first] = result.compared;
      keepChildren(list, choices, createRow, (row, choice) =>
        updateRow(row, choice, choice.key === first, documentUri),
      );
      keepChildren(
        reference,
        choices,
        () => el("option"),
        (option, { title }) => setText(option, title),
      );
      const index = choices.findIndex(({ key }) => key === first);
      if (reference.selectedIndex !== index) reference.selectedIndex = index;
    },
  };
}
