import { el } from "./dom.ts";
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
  element.addEventListener("toggle", () => {
    const { openSections } = state();
    if (openSections.includes(name) === element.open) return;
    const others = openSections.filter((open) => open !== name);
    change({ openSections: element.open ? [...others, name] : others });
  });
  return {
    element,
    summary,
    update: ({ openSections }) => {
      if (element.open !== openSections.includes(name)) element.open = openSections.includes(name);
    },
  };
}
