import { el, keepChildren, setText } from "../../../webview/page/dom.ts";
import { speedUnit } from "../../../webview/page/units.ts";
import type { PageContext, PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import { biteCells, targetText } from "./bite-text.ts";

/** Every point of the curve in a table: for screen readers, and for those who want the numbers. */
export function createBiteTable({ strings }: PageContext): Part {
  const caption = el("caption", { class: "visually-hidden" });
  const head = el("tr");
  const body = el("tbody");
  let drawn: Pick<PageState, "view" | "units"> | null = null;
  return {
    element: el("div", { class: "table-room" }, el("table", {}, caption, el("thead", {}, head), body)),
    update: ({ view, units }) => {
      if (drawn?.view === view && drawn.units === units) return;
      drawn = { view, units };
      const against = view?.bite ? targetText(view.bite.target, units, strings) : "";
      setText(caption, `${strings.bite}. ${against}`);
      const depth = (name: string) => `${name} (${units})`;
      const titles = [
        `${strings.closing} (${speedUnit(units)})`,
        ...[strings.deepest, strings.mean, strings.eightInTen, strings.ideal].map(depth),
        strings.square,
        strings.onTooth,
      ];
      keepChildren(head, titles, () => el("th", { scope: "col" }), setText);
      keepChildren(
        body,
        view?.bite?.curve ?? [],
        () => el("tr"),
        (row, point) => {
          const cells = biteCells(point, units);
          keepChildren(row, cells, (index) => (index === 0 ? el("th", { scope: "row" }) : el("td")), setText);
        },
      );
    },
  };
}
