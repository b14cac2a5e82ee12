/**
 * What part of the plane the drawing shows. Plane points are in mm, y up; screen points in px from the drawing's top
 * left corner, y down.
 */
import type { Size } from "../../webview/page/size.ts";
import type { PlanePoint, SavedState } from "../protocol.ts";

export type Viewport = NonNullable<SavedState["viewport"]>;

export type { Size };

/** From a whole arena to a hundredth of a millimetre: beyond these nothing is left to see. */
const LEAST_SCALE = 0.02;
const MOST_SCALE = 1000;

export function toScreen(
  { centre, pxPerMm }: Viewport,
  { width, height }: Size,
  point: PlanePoint,
): PlanePoint {
  return {
    x: width / 2 + (point.x - centre.x) * pxPerMm,
    y: height / 2 - (point.y - centre.y) * pxPerMm,
  };
}

export function toPlane({ centre, pxPerMm }: Viewport, { width, height }: Size, px: PlanePoint): PlanePoint {
  return {
    x: centre.x + (px.x - width / 2) / pxPerMm,
    y: centre.y - (px.y - height / 2) / pxPerMm,
  };
}

/** Zoomed by a factor, the plane point under a screen point staying where it is. */
export function zoomedAbout(viewport: Viewport, size: Size, factor: number, px: PlanePoint): Viewport {
  const pxPerMm = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, viewport.pxPerMm * factor));
  const fixed = toPlane(viewport, size, px);
  const moved = toPlane({ ...viewport, pxPerMm }, size, px);
  const centre = { x: viewport.centre.x + fixed.x - moved.x, y: viewport.centre.y + fixed.y - moved.y };
  return { centre, pxPerMm, fitted: false };
}

/** Moved as a sheet under the hand: to the right and down for positive px. */
export function panned({ centre, pxPerMm }: Viewport, dx: number, dy: number): Viewport {
  return { centre: { x: centre.x - dx / pxPerMm, y: centre.y + dy / pxPerMm }, pxPerMm, fitted: false };
}

/** Room around a fitted drawing for the spin arrow and the labels. */
const MARGIN_PX = 34;

type Bounds = readonly [number, number, number, number];

/** The viewport that shows a box, upright, middle to middle. */
export function fittedTo(bounds: Bounds, size: Size): Viewport {
  return fittedInto(bounds, size, MARGIN_PX);
}

/** The same with a margin of one's own. */
export function fittedInto([x0, y0, x1, y1]: Bounds, size: Size, marginPx: number): Viewport {
  const scale = (room: number, extent: number) =>
    Math.max(room - 2 * marginPx, room / 3) / Math.max(extent, 1e-3);
  const pxPerMm = Math.min(scale(size.width, x1 - x0), scale(size.height, y1 - y0));
  return {
    centre: { x: (x0 + x1) / 2, y: (y0 + y1) / 2 },
    pxPerMm: Math.min(MOST_SCALE, Math.max(LEAST_SCALE, pxPerMm)),
    fitted: true,
  };
}

/** A share of the way from one viewport to another, the scale growing evenly to the eye. */
export function betweenViewports(from: Viewport, to: Viewport, share: number): Viewport {
  if (share >= 1) return to;
  return {
    centre: {
      x: from.centre.x + (to.centre.x - from.centre.x) * share,
      y: from.centre.y + (to.centre.y - from.centre.y) * share,
    },
    pxPerMm: from.pxPerMm * (to.pxPerMm / from.pxPerMm) ** share,
    fitted: to.fitted,
  };
}
