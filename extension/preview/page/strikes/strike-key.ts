import { STRIKE_KINDS } from "../../../../geometry/bite/bite.ts";
import { el, setHidden, setText } from "../../../webview/page/dom.ts";
import { speedText } from "../../../webview/page/units.ts";
import { fill } from "../../strings.ts";
import type { PageContext, PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import { type ShownStrikes, shownStrikes } from "./shown-strikes.ts";
import { strikeSample } from "./strike-sample.ts";
import { fineShareText, kindText } from "./strike-text.ts";

/** What the bands on the outline mean, with the share of each kind and the speed they are for. */
export function createStrikeKey({ strings }: PageContext): Part {
  const speed = el("li", { class: "strike-speed" });
  const kinds = STRIKE_KINDS.map((kind) => {
    const text = el("span");
    return { kind, text, item: el("li", {}, strikeSample(kind), text) };
  });
  const element = el(
    "ul",
    { class: "legend strike-key", "aria-label": strings.strikeKinds },
    speed,
    ...kinds.map(({ item }) => item),
  );
  let told: { shown: ShownStrikes | null; units: PageState["units"] } | null = null;
  return {
    element,
    update: (state) => {
      const shown = state.toggles.strikes ? shownStrikes(state) : null;
      if (told?.shown === shown && told?.units === state.units) return;
      told = { shown, units: state.units };
      setHidden(element, shown === null);
      if (!shown) return;
      setText(speed, fill(strings.strikesAt, speedText(shown.closingMPerS, state.units)));
      for (const { kind, text, item } of kinds) {
        const own = shown.strikes.filter((strike) => strike.kind === kind);
        setHidden(item, own.length === 0);
        const share = own.reduce((sum, strike) => sum + strike.share, 0);
        setText(text, `${kindText(kind, strings)} ${fineShareText(share)}`);
      }
    },
  };
}
