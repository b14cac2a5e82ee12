/** The drawing with its buttons, switches, badge and read-out, and the same in words. */

import { el, freshId, setAttributes, setHidden, setText } from "../../../webview/page/dom.ts";
import { fill } from "../../strings.ts";
import type { PageContext, PageState } from "../page-state.ts";
import type { Part } from "../part.ts";
import type { Size } from "../viewport.ts";
import { createCamera } from "./camera.ts";
import { createDrawingTools } from "./drawing-tools.ts";
import { followGestures } from "./gestures.ts";
import { createMoves } from "./moves.ts";
import { createPicture } from "./picture.ts";
import { followPointing } from "./pointing.ts";
import type { Edge } from "./shape-layer.ts";

export interface DrawingPart extends Part {
  /** Room for the picture, in px. */
  size(): Size;
  /** Follows a drawing that came ahead of its view: its shape and what turns. */
  updateAhead(state: PageState): void;
}

/** @param strikes the map of strikes and the key to it, kept up by parts of their own */
export function createDrawingPart(
  context: PageContext,
  strikes: { readonly map: SVGElement; readonly key: HTMLElement },
): DrawingPart {
  const { strings } = context;
  const words = createWords(context);
  const canvas = createCanvas(context, words.id);
  const moves = createMoves(context);
  const picture = createPicture(context, canvas, moves, strikes.map);
  const camera = createCamera(context, canvas);
  const tools = createDrawingTools(context, camera);
  const gestures = followGestures(canvas, camera);
  const pointing = followPointing(context, canvas, picture.edgeOf);
  const notes = createNotes(context);
  canvas.prepend(picture.element);
  revealOnChoice(context, canvas, (target) => (gestures.dragging() ? null : picture.edgeOf(target)));

  const frame = el("div", { class: "drawing-frame" }, canvas, ...notes.elements);
  return {
    element: el(
      "section",
      { class: "drawing", "aria-label": strings.drawing },
      frame,
      tools.element,
      strikes.key,
      words.element,
    ),
    size: camera.size,
    updateAhead: (state) => picture.updateAhead(state, camera.size()),
    update: (state) => {
      const size = camera.size();
      setAttributes(frame, { class: state.view?.stale ? "drawing-frame stale" : "drawing-frame" });
      setAttributes(canvas, { "aria-label": nameOf(state, context) });
      tools.update(state);
      picture.update(state, size);
      words.update(state);
      notes.update(state, moves.text(), pointing.text(state, size));
    },
  };
}

function createCanvas({ strings }: PageContext, wordsId: string): HTMLElement {
  const keysId = freshId("drawing-keys");
  return el(
    "div",
    { class: "canvas", tabindex: 0, role: "application", "aria-describedby": `${wordsId} ${keysId}` },
    el("p", { id: keysId, class: "visually-hidden" }, strings.drawingKeys),
  );
}

function nameOf({ view }: PageState, { strings }: PageContext): string {
  const name = fill(strings.drawingOf, view?.reports.mm.title ?? strings.unnamed);
  return view?.stale ? `${name}. ${strings.staleShort}` : name;
}

/** A click on an edge, or Enter with the focus on it, shows the text that made it. */
function revealOnChoice(
  { post }: PageContext,
  canvas: HTMLElement,
  edgeOf: (target: EventTarget | null) => Edge | null,
): void {
  const reveal = (edge: Edge | null) => {
    if (edge) post({ type: "reveal", source: edge.segment.source });
    return edge !== null;
  };
  canvas.addEventListener("click", ({ target }) => reveal(edgeOf(target)));
  canvas.addEventListener("keydown", (event) => {
    const chosen = event.key === "Enter" || event.key === " ";
    if (chosen && reveal(edgeOf(event.target))) event.preventDefault();
  });
}

function createWords({ strings }: PageContext): Part & { readonly id: string } {
  const id = freshId("words");
  const text = el("p", { id });
  const element = el("details", { class: "words" }, el("summary", {}, strings.inWords), text);
  return {
    id,
    element,
    update: ({ view, units }) => {
      setHidden(element, !view?.description);
      setText(text, view?.description?.[units] ?? "");
    },
  };
}

/** What is written over the drawing: that it is stale or missing, what failed, and what is under the pointer. */
function createNotes({ strings }: PageContext) {
  const stale = el("p", { class: "stale-badge" }, strings.stale);
  const empty = el("p", { class: "empty" }, strings.nothingToDraw);
  const failure = el("p", { class: "failure", role: "status" });
  const readout = el("p", { class: "readout", "aria-hidden": "true" });
  return {
    elements: [stale, empty, failure, readout],
    update: ({ view, failed }: PageState, moving: string | null, pointed: string) => {
      setHidden(stale, !view?.stale);
      setHidden(empty, view === null || view.drawing !== null);
      setText(failure, failed ?? "");
      setText(readout, moving ?? pointed);
      setAttributes(readout, { class: moving === null ? "readout" : "readout moving" });
    },
  };
}
