/** What strikes first, in words: each place leads to its text. */
import type { KindOfStrike } from "../../../../geometry/bite/bite.ts";
import { el, keepChildren, setHidden, setText } from "../../../webview/page/dom.ts";
import { speedText } from "../../../webview/page/units.ts";
import { fill } from "../../strings.ts";
import { createFold } from "../fold.ts";
import { chosenIndex, type PageContext, type PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import { type ShownStrikes, shownStrikes } from "./shown-strikes.ts";
import { strikeSample } from "./strike-sample.ts";
import { fineShareText, kindText, placeText, strikeDetail } from "./strike-text.ts";

const FOLD = "strikes";
/** More rows than this nobody reads; what is left is told as one. */
const MOST_ROWS = 40;

export function createStrikeList(context: PageContext): Part {
  const { strings, post, state } = context;
  const list = el("ul", { class: "strike-list" });
  const rest = el("p", { class: "soft" });
  const fold = createFold(context, FOLD, strings.strikesFirst, list, rest);
  let rows: readonly KindOfStrike[] = [];
  let told: { shown: ShownStrikes | null; units: PageState["units"] } | null = null;

  const segments = () => state().view?.drawing?.loops.find(({ kind }) => kind === "outer")?.segments ?? [];
  const create = (index: number) => {
    const button = el("button", { type: "button", class: "strike-row" });
    button.addEventListener("click", () => {
      const segment = segments()[rows[index]?.place.index ?? -1];
      if (segment) post({ type: "reveal", source: segment.source });
    });
    return el("li", {}, button);
  };
  const update = (item: Element, strike: KindOfStrike) => {
    const { units } = state();
    item.firstElementChild?.replaceChildren(
      el("span", { class: "strike-share" }, fineShareText(strike.share)),
      strikeSample(strike.kind),
      el("span", { class: "strike-kind" }, kindText(strike.kind, strings)),
      el("span", { class: "strike-place" }, placeText(strike.place, segments(), units, strings)),
      el("span", { class: "strike-detail" }, strikeDetail(strike, units, strings)),
    );
  };

  return {
    element: fold.element,
    update: (next) => {
      fold.update(next);
      const point = next.view?.bite?.curve[chosenIndex(next)];
      if (point) setText(fold.summary, fill(strings.strikesFirst, speedText(point.closingMPerS, next.units)));
      if (!next.openSections.includes(FOLD)) return;
      const shown = shownStrikes(next);
      if (told?.shown === shown && told?.units === next.units) return;
      told = { shown, units: next.units };
      rows = shown?.strikes.slice(0, MOST_ROWS) ?? [];
      keepChildren(list, rows, create, update);
      const left = restText(shown, context);
      setHidden(rest, left === "");
      setText(rest, left);
    },
  };
}

/** The places beyond the rows, and the targets that meet nothing. */
function restText(shown: ShownStrikes | null, { strings }: PageContext): string {
  if (!shown) return "";
  const beyond = shown.strikes.slice(MOST_ROWS);
  const share = beyond.reduce((sum, strike) => sum + strike.share, 0);
  const more = beyond.length > 0 ? [fill(strings.strikesMore, beyond.length, fineShareText(share))] : [];
  const passed = shown.passedShare > 0 ? [fill(strings.strikesPass, fineShareText(shown.passedShare))] : [];
  return [...more, ...passed].join(" ");
}
