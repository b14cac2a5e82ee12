import { el, keepChildren, setAttributes, setHidden, setText } from "../../../../webview/page/dom.ts";

/** A plain table: a head, and rows that begin with what they are about. */
export interface RowsTable {
  readonly element: HTMLElement;
  /** @param chosen the row that is set apart; `null` for none */
  update(
    caption: string,
    heads: readonly string[],
    rows: readonly (readonly string[])[],
    chosen?: number | null,
  ): void;
}

export function createRowsTable(): RowsTable {
  const caption = el("caption", { class: "visually-hidden" });
  const head = el("tr");
  const body = el("tbody");
  const table = el("table", { class: "rows" }, caption, el("thead", {}, head), body);
  const room = el("div", { class: "table-room", tabindex: 0, role: "region" }, table);
  return {
    element: room,
    update: (title, heads, rows, chosen = null) => {
      setText(caption, title);
      setAttributes(room, { "aria-label": title });
      setHidden(room, rows.length === 0);
      keepChildren(
        head,
        heads,
        () => el("th", { scope: "col" }),
        (cell, text) => setText(cell, text),
      );
      keepChildren(
        body,
        rows,
        () => el("tr", {}, el("th", { scope: "row" })),
        (row, [first = "", ...cells], i) => {
          setAttributes(row, { class: i === chosen ? "chosen" : null });
          if (row.firstElementChild) setText(row.firstElementChild, first);
          keepChildren(
            row,
            cells,
            () => el("td"),
            (cell, text) => setText(cell, text),
          );
        },
      );
    },
  };
}
