import { el, setText } from "../../../webview/page/dom.ts";
import type { DrawnSegment } from "../../protocol.ts";
import type { PageContext } from "../page-state.ts";
import { placeText } from "../strikes/strike-text.ts";
import { contactText } from "./approach-text.ts";
import type { Worked } from "./worked.ts";

export interface ContactWords {
  readonly element: HTMLElement;
  text(): string;
  update(worked: Worked): void;
}

/** How an approach ends, with the struck place as the way to its text. */
export function createContactWords({ strings, post, state }: PageContext): ContactWords {
  const words = el("span");
  const place = el("button", { type: "button", class: "link" });
  const element = el("p", { class: "approach-words" }, words);
  let struck: DrawnSegment | undefined;
  place.addEventListener("click", () => {
    if (struck) post({ type: "reveal", source: struck.source });
  });
  return {
    element,
    text: () => element.textContent,
    update: (worked) => {
      const { view, units } = state();
      const segments = view?.drawing?.loops.find(({ kind }) => kind === "outer")?.segments ?? [];
      const at = worked.approach.contact.place;
      struck = segments[at?.index ?? -1];
      setText(words, `${contactText(worked, units, strings)} `);
      // Never a button without a name.
      if (at === null) place.remove();
      else {
        setText(place, placeText(at, segments, units, strings));
        if (!place.isConnected) element.append(place);
      }
    },
  };
}
