import { el, freshId, setAttributes, setHidden, setText } from "../../../../webview/page/dom.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { AimChoices } from "./choices.ts";

export interface AimForm {
  readonly element: HTMLElement;
  update(shown: FormState): void;
}

export interface FormState {
  readonly choices: AimChoices;
  /** The aim of the text; `null` where it has none. */
  readonly line: string | null;
  readonly isSearching: boolean;
}

export interface FormActions {
  change(changes: Partial<AimChoices>): void;
  search(): void;
  stop(): void;
}

const EFFORTS = ["quick", "usual", "thorough"] as const;

/** The aim, how much is to be tried, and the button that searches or stops. */
export function createAimForm(strings: StudiesStrings, { change, search, stop }: FormActions): AimForm {
  const [aimId, effortId, hintId] = [freshId("aim"), freshId("effort"), freshId("aim-hint")];
  const aim = el("input", {
    id: aimId,
    type: "text",
    class: "aim-text",
    spellcheck: "false",
    autocomplete: "off",
    "aria-describedby": hintId,
  });
  const names = {
    quick: strings.aimEffortQuick,
    usual: strings.aimEffortUsual,
    thorough: strings.aimEffortThorough,
  };
  const effort = el(
    "select",
    { id: effortId },
    ...EFFORTS.map((one) => el("option", { value: one }, names[one])),
  );
  const button = el("button", { type: "submit", class: "main-action" }, strings.aimSearch);
  const back = el("button", { type: "button", class: "link" }, strings.aimOfText);
  let isSearching = false;
  aim.addEventListener("input", () => change({ typed: aim.value }));
  effort.addEventListener("change", () => change({ effort: EFFORTS[effort.selectedIndex] ?? "usual" }));
  back.addEventListener("click", () => change({ typed: null }));
  const form = el(
    "form",
    { class: "aim-form" },
    el("div", { class: "field wide" }, el("label", { for: aimId }, strings.aimLabel), aim),
    el("p", { id: hintId, class: "soft" }, strings.aimHint),
    el(
      "div",
      { class: "controls" },
      el("div", { class: "field" }, el("label", { for: effortId }, strings.aimEffort), effort),
      button,
      back,
    ),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (isSearching) stop();
    else search();
  });
  return {
    element: form,
    update: ({ choices, line, isSearching: searching }) => {
      isSearching = searching;
      const text = choices.typed ?? line ?? "";
      // The cursor stays where one types.
      if (aim.value !== text) aim.value = text;
      effort.selectedIndex = EFFORTS.indexOf(choices.effort);
      setText(button, searching ? strings.stop : strings.aimSearch);
      setAttributes(aim, { readonly: searching });
      effort.disabled = searching;
      button.disabled = !searching && text.trim() === "";
      setHidden(back, searching || line === null || choices.typed === null || choices.typed === line);
    },
  };
}
