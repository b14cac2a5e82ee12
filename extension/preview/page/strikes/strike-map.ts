/** Each struck part of the outline as a band along it, the wider the more is struck there. */
import type { KindOfStrike } from "../../../../geometry/bite/bite.ts";
import { keepChildren, setAttributes, svg } from "../../../webview/page/dom.ts";
import type { PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import { type ShownStrikes, shownStrikes } from "./shown-strikes.ts";
import { strikePath } from "./strike-paths.ts";

/** Bands beyond these are hairlines: an outline of thousands of segments has them. */
const MOST_BANDS = 400;

const [LEAST_BAND_PX, LEAST_DOT_PX, FULL_SHARE_PX] = [4, 8, 14];

/** For the eye: the list of strikes says the same. In mm, under the viewport of the drawing. */
export function createStrikeMap(): Part<SVGGElement> {
  const element = svg("g", { class: "strikes", "aria-hidden": "true" });
  let drawn: ShownStrikes | null = null;
  return {
    element,
    update: (state) => {
      const shown = state.toggles.strikes ? shownStrikes(state) : null;
      if (shown === drawn) return;
      drawn = shown;
      const segments = outerSegments(state);
      const strikes = shown?.strikes.slice(0, MOST_BANDS) ?? [];
      keepChildren(element, strikes, createBand, (band, strike) => {
        const [body, core] = band.children;
        const corner = strike.place.kind === "corner";
        const path = strikePath(strike, segments);
        const width = (corner ? LEAST_DOT_PX : LEAST_BAND_PX) + FULL_SHARE_PX * strike.share;
        setAttributes(band, { class: bandClass(strike) });
        if (body) setAttributes(body, { d: path, "stroke-width": width.toFixed(1) });
        // A dot off the teeth is hollow: dashes would not show on it.
        const hollow = corner && strike.kind === "off";
        if (core) setAttributes(core, { d: hollow ? path : "", "stroke-width": (width / 2).toFixed(1) });
      });
    },
  };
}

function createBand(): SVGGElement {
  return svg("g", {}, svg("path", { class: "strike-body" }), svg("path", { class: "strike-core" }));
}

function bandClass({ kind, place }: KindOfStrike): string {
  return place.kind === "corner" ? `strike strike-${kind} strike-corner` : `strike strike-${kind}`;
}

function outerSegments({ view }: PageState) {
  return view?.drawing?.loops.find(({ kind }) => kind === "outer")?.segments ?? [];
}
