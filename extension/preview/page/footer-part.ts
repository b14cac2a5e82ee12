import { el } from "../../webview/page/dom.ts";
import type { PageContext } from "./page-state.ts";
import type { Part } from "./part.ts";

/** The cautions in short, always in sight, with the way to all of them. */
export function createFooter({ strings, post }: PageContext): Part {
  const button = el("button", { type: "button", class: "link" }, strings.allCautions);
  button.addEventListener("click", () => post({ type: "showCautions" }));
  return {
    element: el(
      "footer",
      { class: "cautions", "aria-label": strings.cautions },
      el("p", {}, strings.cautionShort),
      button,
    ),
    update: () => {},
  };
}
