import { el, freshId, setAttributes, setHidden } from "../../webview/page/dom.ts";
import type { StudiesStrings } from "../strings.ts";
import type { StudyPart } from "./part.ts";

/** The tabs of the parts; none in sight where there is only one part. */
export interface Tabs {
  readonly element: HTMLElement;
  update(shown: string): void;
  /** Ties the element of a part to its tab. */
  own(part: string, panel: HTMLElement): void;
}

export function createTabs(
  parts: readonly StudyPart[],
  strings: StudiesStrings,
  choose: (part: string) => void,
): Tabs {
  const tabs = parts.map((part) => {
    const attributes = { type: "button", role: "tab", id: freshId("tab"), class: "tab" };
    const button = el("button", attributes, part.title(strings));
    button.addEventListener("click", () => choose(part.name));
    return { name: part.name, button };
  });
  const element = el(
    "div",
    { class: "tabs", role: "tablist", "aria-label": strings.studies },
    ...tabs.map(({ button }) => button),
  );
  element.addEventListener("keydown", (event) => {
    const here = tabs.findIndex(({ button }) => button === document.activeElement);
    const next = tabs[neighbour(event.key, here, tabs.length) ?? -1];
    if (!next) return;
    event.preventDefault();
    next.button.focus();
    choose(next.name);
  });
  setHidden(element, parts.length < 2);
  return {
    element,
    update: (shown) => {
      for (const { name, button } of tabs) {
        const isShown = name === shown;
        setAttributes(button, { "aria-selected": isShown ? "true" : "false", tabindex: isShown ? 0 : -1 });
      }
    },
    own: (part, panel) => {
      const tab = tabs.find(({ name }) => name === part)?.button;
      if (!tab || parts.length < 2) return;
      panel.id ||= freshId("panel");
      setAttributes(panel, { role: "tabpanel", "aria-labelledby": tab.id });
      setAttributes(tab, { "aria-controls": panel.id });
    },
  };
}

function neighbour(key: string, here: number, count: number): number | null {
  if (here < 0) return null;
  if (key === "ArrowRight") return (here + 1) % count;
  if (key === "ArrowLeft") return (here + count - 1) % count;
  if (key === "Home") return 0;
  return key === "End" ? count - 1 : null;
}
