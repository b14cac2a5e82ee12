/** A table of texts with a caption, in a room of its own that scrolls where it is too wide. */
import { el, keepChildren, setAttributes, setText } from "../../webview/page/dom.ts";

export interface PlainTable {
  readonly element: HTMLElement;
  /** The first cell of each row names it. */
  update(caption: string, head: readonly string[], rows: readonly (readonly string[])[]): void;
}

export function createPlainTable(): PlainTable {
  const caption = el("caption", { class: "visually-hidden" });
  const head = el("tr");
  const body = el("tbody");
  const table = el("table", { class: "plain" }, caption, el("thead", {}, head), body);
  const room = el("div", { class: "table-room", tabindex: 0, role: "region" }, table);
  return {
    element: room,
    update: (title, heads, rows) => {
      setText(caption, title);
      setAttributes(room, { "aria-label": title });
      keepChildren(head, heads, () => el("th", { scope: "col" }), setText);
      keepChildren(
        body,
        rows,
        () => el("tr"),
        (row, cells) => {
          keepChildren(
            row,
            cells,
            (i) => (i === 0 ? el("th", { scope: "row" }) : el("td")),
            (cell, text) => setText(cell, text),
          );
        },
      );
    },
  };
}

export interface Facts {
  readonly element: HTMLElement;
  update(facts: readonly (readonly [name: string, value: string])[]): void;
}

/** Names and what they come to. */
export function createFacts(): Facts {
  const list = el("dl", { class: "facts" });
  return {
    element: list,
    update: (facts) =>
      keepChildren(
        list,
        facts,
        () => el("div", {}, el("dt"), el("dd")),
        (row, [name, value]) => {
          const [term, told] = row.children;
          if (term) setText(term, name);
          if (told) setText(told, value);
        },
      ),
  };
}
