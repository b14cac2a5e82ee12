import type { UnitSystem } from "../../../geometry/figures/present.ts";
import { el, freshId, keepChildren, setHidden, setText } from "../../webview/page/dom.ts";
import type { PageContext } from "./page-state.ts";
import type { Part } from "./part.ts";

/** What is shown, and how: the bar's name, its variant, the units, the way to the cut file. */
export function createHeader(context: PageContext): Part<HTMLElement> {
  const { strings, post } = context;
  const title = el("h1");
  const subtitle = el("p", { class: "subtitle" });
  const variants = createVariantChooser(context);
  const units = createUnitSwitch(context);
  const exporter = el("button", { type: "button", class: "main-action" }, strings.exportCutFile);
  exporter.addEventListener("click", () => post({ type: "exportCutFile" }));
  const controls = el("div", { class: "controls" }, variants.element, units.element, exporter);
  return {
    element: el("header", {}, el("div", { class: "titles" }, title, subtitle), controls),
    update: (state) => {
      const report = state.view?.reports[state.units];
      setText(title, report?.title ?? strings.loading);
      setText(subtitle, report?.subtitle ?? "");
      setHidden(controls, state.view === null);
      variants.update(state);
      units.update(state);
    },
  };
}

function createVariantChooser({ strings, post }: PageContext): Part {
  const id = freshId("variant");
  const select = el("select", { id });
  const element = el("div", { class: "field" }, el("label", { for: id }, strings.variant), select);
  let names: readonly string[] = [];
  select.addEventListener("change", () => {
    post({ type: "chooseVariant", variant: names[select.selectedIndex - 1] ?? null });
  });
  return {
    element,
    update: ({ view }) => {
      names = view?.variants ?? [];
      setHidden(element, names.length === 0);
      keepChildren(select, [strings.asWritten, ...names], () => el("option"), setText);
      const chosen = view?.variant == null ? 0 : names.indexOf(view.variant) + 1;
      if (select.selectedIndex !== chosen) select.selectedIndex = chosen;
    },
  };
}

function createUnitSwitch({ strings, post, change }: PageContext): Part {
  const group = freshId("units");
  const radio = (units: UnitSystem, text: string, title: string) => {
    const input = el("input", { type: "radio", name: group, value: units, "aria-label": title });
    input.addEventListener("change", () => {
      change({ units });
      post({ type: "chooseUnits", units });
    });
    return { units, input, element: el("label", { title }, input, el("span", {}, text)) };
  };
  const radios = [
    radio("mm", strings.millimetres, strings.millimetresLong),
    radio("in", strings.inches, strings.inchesLong),
  ];
  return {
    element: el(
      "fieldset",
      { class: "unit-switch" },
      el("legend", { class: "visually-hidden" }, strings.units),
      ...radios.map(({ element }) => element),
    ),
    update: (state) => {
      for (const { units, input } of radios) input.checked = state.units === units;
    },
  };
}
