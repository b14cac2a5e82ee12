import { observedSize } from "../../../webview/page/observed-size.ts";
import type { Drawing } from "../../protocol.ts";
import { glide } from "../motion.ts";
import type { PageContext, PageState } from "../page-state.ts";
import { fittedTo, type Size, type Viewport } from "../viewport.ts";
import type { Camera } from "./gestures.ts";

/** What looks at the plane through an element. A hand on it stops any glide. */
export function createCamera(context: PageContext, canvas: Element): Camera {
  let stop = () => {};
  const observed = observedSize(canvas, () => show(afterResize(context.state(), size())));
  const size = () => ({ width: Math.max(1, observed().width), height: Math.max(1, observed().height) });
  const show = (viewport: Viewport | null) => context.change({ viewport });
  return {
    size,
    viewport: () => context.state().viewport,
    show: (viewport) => {
      stop();
      show(viewport);
    },
    fit: () => {
      stop();
      const { viewport, view } = context.state();
      if (viewport && view?.drawing) stop = glide(viewport, fitOf(view.drawing, size()), show);
    },
  };
}

/** The viewport of a first drawing; `null` while there is nothing to fit. */
export function firstViewport({ view }: PageState, size: Size): Viewport | null {
  return view?.drawing ? fitOf(view.drawing, size) : null;
}

/** A panel that changes its size keeps a fitted drawing fitted, and leaves any other where its reader put it. */
function afterResize(state: PageState, size: Size): Viewport | null {
  return state.viewport?.fitted && state.view?.drawing ? fitOf(state.view.drawing, size) : state.viewport;
}

/** The box a drawing is fitted by: the circle the tips run on, and whatever lies beyond it. */
function fitOf({ boundsMm, maxRadiusMm }: Drawing, size: Size): Viewport {
  const [x0, y0, x1, y1] = boundsMm;
  const r = maxRadiusMm;
  return fittedTo([Math.min(x0, -r), Math.min(y0, -r), Math.max(x1, r), Math.max(y1, r)], size);
}
