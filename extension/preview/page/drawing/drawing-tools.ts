import { el, setHidden } from "../../../webview/page/dom.ts";
import type { ToggleName } from "../../protocol.ts";
import type { PageContext, PageState } from "../page-state.ts";
import { type Camera, zoomIn, zoomOut } from "./gestures.ts";

/** Zoom and fit, and what the drawing shows besides the bar. */
export interface DrawingTools {
  readonly element: HTMLElement;
  update(state: PageState): void;
}

export function createDrawingTools({ strings, change, state }: PageContext, camera: Camera): DrawingTools {
  const button = (text: string, title: string, act: () => void) => {
    const element = el("button", { type: "button", class: "tool", title, "aria-label": title }, text);
    element.addEventListener("click", act);
    return element;
  };
  const toggle = (name: ToggleName, label: string) => {
    const box = el("input", { type: "checkbox" });
    box.addEventListener("change", () => change({ toggles: { ...state().toggles, [name]: box.checked } }));
    return { name, box, element: el("label", { class: "switch" }, box, label) };
  };
  const toggles = [
    toggle("dimensions", strings.dimensions),
    toggle("points", strings.points),
    toggle("strikes", strings.strikes),
    toggle("variants", strings.otherVariants),
  ];
  const zoom = el(
    "div",
    { class: "zoom", role: "group", "aria-label": strings.zoom },
    button("−", strings.zoomOut, () => zoomOut(camera)),
    button("+", strings.zoomIn, () => zoomIn(camera)),
    button(strings.fit, strings.fitLong, () => camera.fit()),
  );
  const switches = el(
    "div",
    { class: "switches", role: "group", "aria-label": strings.show },
    ...toggles.map(({ element }) => element),
  );
  return {
    element: el("div", { class: "tools" }, zoom, switches),
    update: (next) => {
      for (const { name, box, element } of toggles) {
        box.checked = next.toggles[name];
        setHidden(element, !hasSome(name, next));
      }
    },
  };
}

/** Whether there is anything to show or hide. */
function hasSome(name: ToggleName, { view }: PageState): boolean {
  if (name === "variants") return (view?.ghosts.length ?? 0) > 0;
  return name !== "strikes" || (view?.bite?.curve.length ?? 0) > 0;
}
