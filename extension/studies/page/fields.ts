/** Labelled fields of a form. What is typed counts when the field is left or Enter is pressed. */
import { el, freshId } from "../../webview/page/dom.ts";

export interface Field {
  readonly element: HTMLElement;
  readonly value: string;
  show(value: string): void;
}

export interface TextFieldOptions {
  readonly label: string;
  /** What an empty field stands for, or an example; shown while it is empty. */
  readonly hint: string;
  changed(value: string): void;
}

export function textField({ label, hint, changed }: TextFieldOptions): Field {
  const id = freshId("field");
  const input = el("input", {
    type: "text",
    id,
    placeholder: hint,
    spellcheck: "false",
    autocomplete: "off",
  });
  input.addEventListener("change", () => changed(input.value));
  return fieldOf(id, label, input);
}

export interface ChoiceFieldOptions<T extends string> {
  readonly label: string;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  changed(value: T): void;
}

export function choiceField<T extends string>({ label, options, changed }: ChoiceFieldOptions<T>): Field {
  const id = freshId("field");
  const select = el("select", { id }, ...options.map(({ value, text }) => el("option", { value }, text)));
  select.addEventListener("change", () => {
    const chosen = options[select.selectedIndex];
    if (chosen) changed(chosen.value);
  });
  return fieldOf(id, label, select);
}

function fieldOf(id: string, label: string, input: HTMLInputElement | HTMLSelectElement): Field {
  return {
    element: el("div", { class: "asked-field" }, el("label", { for: id }, label), input),
    get value() {
      return input.value;
    },
    show: (value) => {
      // What is being typed is the reader's.
      if (document.activeElement !== input && input.value !== value) input.value = value;
    },
  };
}
