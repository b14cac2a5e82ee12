import { el } from "../../webview/page/dom.ts";
import type { PageContext, PageState } from "./page-state.ts";

export interface Fold {
  readonly element: HTMLDetailsElement;
  readonly summary: HTMLElement;
  update(state: PageState): void;
}

/** A section that folds, and stays as its reader left it through updates and reloads. */
export function createFold(
  { state, change }: PageContext,
  name: string,
  title: string,
  ...content: Node[]
): Fold {
  const summary = el("summary", {}, title);
  const element = el("details", { class: "fold" }, summary, ...content);
  /** What the state and the element agree on: a click is told of only after the element has changed. */
  let agreed = false;
  element.addEventListener("toggle", () => {
    if (agreed === element.open) return;
    agreed = element.open;
    const others = state().openSections.filter((open) => open !== name);
    change({ openSections: element.open ? [...others, name] : others });
  });
  return {
    element,
    summary,
    update: ({ openSections }) => {
      if (agreed === openSections.includes(name)) return;
      agreed = !agreed;
      element.open = agreed;
    },
  };
}
