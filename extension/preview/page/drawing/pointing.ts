import { coordinates, lengthText } from "../../../webview/page/units.ts";
import type { PlanePoint } from "../../protocol.ts";
import { fill } from "../../strings.ts";
import type { PageContext, PageState } from "../page-state.ts";
import { type Size, toPlane } from "../viewport.ts";
import { edgeText } from "./edge-text.ts";
import { within } from "./gestures.ts";
import type { Edge } from "./shape-layer.ts";

/** What the pointer or the focus is on: an edge in words, else the place under the pointer. */
export interface Pointing {
  text(state: PageState, size: Size): string;
}

export function followPointing(
  context: PageContext,
  canvas: HTMLElement,
  edgeOf: (target: EventTarget | null) => Edge | null,
): Pointing {
  let px: PlanePoint | null = null;
  let target: EventTarget | null = null;
  const set = (at: PlanePoint | null, on: EventTarget | null) => {
    px = at;
    target = on;
    context.change({});
  };
  canvas.addEventListener("pointermove", (event) => set(within(canvas, event), event.target));
  canvas.addEventListener("pointerleave", () => set(null, document.activeElement));
  canvas.addEventListener("focusin", (event) => set(px, event.target));
  canvas.addEventListener("focusout", () => set(px, null));
  return {
    text: (state, size) => {
      const edge = edgeOf(target);
      if (edge) return edgeText(edge.segment, edge.loop, state.units, context.strings);
      return px ? placeText(px, state, size, context) : "";
    },
  };
}

function placeText(
  px: PlanePoint,
  { viewport, view, units }: PageState,
  size: Size,
  { strings }: PageContext,
): string {
  if (!viewport || !view?.drawing) return "";
  const at = toPlane(viewport, size, px);
  return fill(strings.pointerAt, ...coordinates(at, units), lengthText(Math.hypot(at.x, at.y), units));
}
