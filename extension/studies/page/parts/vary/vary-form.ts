import {
  el,
  freshId,
  keepChildren,
  setAttributes,
  setHidden,
  setText,
} from "../../../../webview/page/dom.ts";
import type { StudiesStrings } from "../../../strings.ts";
import type { MovableChoice, MovableResult } from "../../../worker/movable-job.ts";
import { type Asked, type AskedLet, BITE, COUNTS, FIRST_LET } from "./asked.ts";

export interface VaryForm {
  readonly element: HTMLFormElement;
  update(asked: Asked, choices: MovableResult): void;
}

/** Which lets, from where to where, and which figure. Told with each change; sent with the button or the Enter key. */
export function createVaryForm(
  strings: StudiesStrings,
  change: (asked: Asked) => void,
  send: () => void,
): VaryForm {
  let asked: Asked | null = null;
  let choices: MovableResult = { lets: [], figures: [] };
  const changeLet = (which: "first" | "second", next: AskedLet | null) => {
    if (!asked) return;
    if (which === "first") change({ ...asked, first: next ?? asked.first });
    else change({ ...asked, second: next });
  };
  const first = createLetFields(strings.varyFirst, null, (next) => changeLet("first", next), strings);
  const second = createLetFields(
    strings.varySecond,
    strings.varyNone,
    (next) => changeLet("second", next),
    strings,
  );
  const figure = el("select");
  figure.addEventListener("change", () => asked && change({ ...asked, figure: figure.value }));
  const speed = el("input", { type: "text", size: 8 });
  speed.addEventListener("input", () => asked && change({ ...asked, speed: speed.value }));
  const speedLabel = labelled(strings.varySpeed, speed);
  const go = el("button", { type: "submit", class: "main-action" }, strings.workOut);
  const element = el(
    "form",
    { class: "vary-form" },
    first.element,
    second.element,
    el("div", { class: "fields" }, labelled(strings.figure, figure), speedLabel, go),
  );
  element.addEventListener("submit", (event) => {
    event.preventDefault();
    send();
  });
  return {
    element,
    update: (next, nextChoices) => {
      asked = next;
      choices = nextChoices;
      first.update(next.first, choices.lets);
      second.update(
        next.second,
        choices.lets.filter(({ name }) => name !== next.first.name),
      );
      setHidden(second.element, choices.lets.length < 2);
      setOptions(figure, [
        ...choices.figures.map(({ key, label }): Option => [key, label]),
        [BITE, strings.varyBite],
      ]);
      figure.value = next.figure;
      setHidden(speedLabel, next.figure !== BITE);
      setValue(speed, next.speed);
    },
  };
}

/** @param none the choice of no let at all; null where there is to be one */
function createLetFields(
  title: string,
  none: string | null,
  change: (next: AskedLet | null) => void,
  strings: StudiesStrings,
) {
  let asked: AskedLet | null = null;
  let lets: readonly MovableChoice[] = [];
  const name = el("select");
  const from = el("input", { type: "text", size: 9 });
  const to = el("input", { type: "text", size: 9 });
  const count = el("input", { type: "number", min: 2, max: 10_000, class: "count" });
  name.addEventListener("change", () => {
    const found = lets.find((one) => one.name === name.value);
    // Another let has a range of its own.
    change(
      found ? { name: found.name, from: found.from, to: found.to, count: asked?.count ?? COUNTS.two } : null,
    );
  });
  const read = () => change({ ...(asked ?? FIRST_LET), from: from.value, to: to.value, count: count.value });
  for (const field of [from, to, count]) field.addEventListener("input", read);
  const range = el(
    "span",
    { class: "fields" },
    labelled(strings.varyFrom, from),
    labelled(strings.varyTo, to),
    labelled(strings.varyCount, count),
  );
  return {
    element: el(
      "fieldset",
      { class: "fields" },
      el("legend", { class: "visually-hidden" }, title),
      labelled(title, name),
      range,
    ),
    update: (next: AskedLet | null, nextLets: readonly MovableChoice[]) => {
      asked = next;
      lets = nextLets;
      const options = lets.map((one): Option => [one.name, `${one.name} = ${one.now}`]);
      setOptions(name, none === null ? options : [["", none], ...options]);
      name.value = next?.name ?? "";
      setHidden(range, next === null);
      setValue(from, next?.from ?? "");
      setValue(to, next?.to ?? "");
      setValue(count, next?.count ?? "");
    },
  };
}

type Option = readonly [value: string, text: string];

function setOptions(select: HTMLSelectElement, options: readonly Option[]): void {
  keepChildren(
    select,
    options,
    () => el("option"),
    (option, [value, text]) => {
      setAttributes(option, { value });
      setText(option, text);
    },
  );
}

/** Leaves the place of the cursor alone where the text is the same. */
function setValue(input: HTMLInputElement, value: string): void {
  if (input.value !== value) input.value = value;
}

/** Beside its label, not in it: the options of a choice would be read as part of its name. */
function labelled(text: string, control: HTMLElement): HTMLElement {
  const id = freshId("field");
  control.id = id;
  return el("span", { class: "field" }, el("label", { for: id }, text), control);
}
