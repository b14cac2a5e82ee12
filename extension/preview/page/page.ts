/** The page as a whole: its parts in order, its state, and one drawing a frame: the shape first. */

import { el, setText } from "../../webview/page/dom.ts";
import type { HostMessage, PageMessage, SavedState, View } from "../protocol.ts";
import { fill, type PreviewStrings } from "../strings.ts";
import { createBitePart } from "./chart/bite-part.ts";
import { firstViewport } from "./drawing/camera.ts";
import { createDrawingPart } from "./drawing/drawing-part.ts";
import { createFigures, createKeyFigures, createRequirements } from "./figures-part.ts";
import { createFooter } from "./footer-part.ts";
import { createHeader } from "./header-part.ts";
import type { HostLink } from "./host-link.ts";
import {
  firstState,
  type PageContext,
  type PageState,
  savedState,
  withDrawing,
  withView,
} from "./page-state.ts";
import type { Part } from "./part.ts";
import { createProblemsPart } from "./problems-part.ts";
import { createSettledNews } from "./settled-news.ts";
import { createStrikeKey } from "./strikes/strike-key.ts";
import { createStrikeMap } from "./strikes/strike-map.ts";

/** Build the page into an element and keep it up with what the host says. */
export function startPage(root: HTMLElement, link: HostLink, strings: PreviewStrings): void {
  const saved = link.load();
  let state = firstState(saved);
  let wanted: string | null = saved?.variant ?? null;
  let requested = 0;
  /** The view that the whole page shows; the drawing may be one ahead. */
  let told: View | null = null;
  let kept: SavedState | null = null;
  const live = el("p", { class: "visually-hidden", role: "status" });

  const change = (changes: Partial<PageState>) => {
    state = { ...state, ...changes };
    if (requested === 0) requested = requestAnimationFrame(draw);
  };
  const context: PageContext = {
    strings,
    change,
    state: () => state,
    post: link.post,
    announce: (text) => setText(live, text),
  };
  const parts = createParts(context);
  const news = createSettledNews(context);
  root.append(...layOut(parts), live);

  function draw(): void {
    requested = 0;
    if (state.viewport === null) state = { ...state, viewport: firstViewport(state, parts.drawing.size()) };
    // All else waits for its own figures: it would only show the old ones again.
    if (state.aheadVersion !== null) {
      parts.drawing.updateAhead(state);
      return;
    }
    for (const part of parts.first) part.update(state);
    // A new text is drawn at once, and told in tables and charts with the next frame: the eye is on the drawing.
    if (told !== null && told !== state.view) requestAnimationFrame(drawRest);
    else drawRest();
  }

  function drawRest(): void {
    told = state.view;
    for (const part of [...parts.rest, news]) part.update(state);
    keep();
  }

  /** The editor is told only what is new: with each key it is the same. */
  function keep(): void {
    if (!state.view) return;
    const next = savedState(state);
    if (kept && sameFields(kept, next)) return;
    kept = next;
    link.save(next);
  }

  link.onMessage((message) => {
    const next = afterMessage(message, state, strings);
    if (!next) return;
    const first = state.view === null;
    change(first && next.view ? withoutForeignPlace(next, next.view, saved?.documentUri ?? null) : next);
    if (first && next.view) askForVariant(next.view, wanted, link.post);
    if (next.view) wanted = null;
  });
  link.post({ type: "ready" });
  change({});
}

/** The state after a message; `null` where the message changes nothing. */
function afterMessage(message: HostMessage, state: PageState, strings: PreviewStrings): PageState | null {
  switch (message.type) {
    case "view":
      return withView(state, message.view, message.units);
    case "drawing":
      return withDrawing(state, message);
    case "highlight":
      return { ...state, highlight: message.source };
    case "failed":
      if (state.pendingMove?.request !== message.request) return null;
      return { ...state, pendingMove: null, failed: fill(strings.moveFailed, message.message) };
  }
}

/** A page that comes back to another document does not keep the old one's zoom. */
function withoutForeignPlace(state: PageState, view: View, documentUri: string | null): PageState {
  return documentUri === view.documentUri ? state : { ...state, viewport: null };
}

/** After a reload the host starts with the bar as it stands: ask for what was looked at. */
function askForVariant(view: View, wanted: string | null, post: (message: PageMessage) => void): void {
  if (wanted !== null && wanted !== view.variant && view.variants.includes(wanted))
    post({ type: "chooseVariant", variant: wanted });
}

function sameFields<T extends object>(a: T, b: T): boolean {
  return Object.entries(a).every(([name, value]) => b[name as keyof T] === value);
}

function createParts(context: PageContext) {
  const header = createHeader(context);
  const strikeMap = createStrikeMap();
  const strikeKey = createStrikeKey(context);
  const drawing = createDrawingPart(context, { map: strikeMap.element, key: strikeKey.element });
  const keyFigures = createKeyFigures(context);
  const problems = createProblemsPart(context);
  const requirements = createRequirements(context);
  const bite = createBitePart(context);
  const figures = createFigures(context);
  const footer = createFooter(context);
  const first: readonly Part[] = [header, drawing, keyFigures, footer];
  const rest: readonly Pick<Part, "update">[] = [strikeMap, strikeKey, problems, requirements, bite, figures];
  return { header, drawing, keyFigures, problems, requirements, bite, figures, footer, first, rest };
}

function layOut(parts: ReturnType<typeof createParts>): HTMLElement[] {
  const { header, drawing, keyFigures, problems, requirements, bite, figures, footer } = parts;
  const facts = [keyFigures, problems, requirements, bite, figures].map(({ element }) => element);
  return [
    header.element,
    el("main", {}, drawing.element, el("div", { class: "facts" }, ...facts)),
    footer.element,
  ];
}
