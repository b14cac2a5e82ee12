/** The layers of the drawing, from the grid at the back to the points in front. */
import { setAttributes, svg } from "../../../webview/page/dom.ts";
import type { PageContext, PageState } from "../page-state.ts";
import type { Size, Viewport } from "../viewport.ts";
import { createDimensionLayer } from "./dimension-layer.ts";
import { createGround } from "./ground.ts";
import { createHandleLayer } from "./handle-layer.ts";
import type { Moves } from "./moves.ts";
import { createProblemMarks } from "./problem-marks.ts";
import { createShapeLayer, type Edge } from "./shape-layer.ts";
import { createSpinMarks } from "./spin-marks.ts";

export interface Picture {
  readonly element: SVGSVGElement;
  update(state: PageState, size: Size): void;
  /** Only what follows each key: the shape, and what turns. */
  updateAhead(state: PageState, size: Size): void;
  /** The edge that an element of the picture stands for. */
  edgeOf(target: EventTarget | null): Edge | null;
}

export function createPicture(
  context: PageContext,
  canvas: Element,
  moves: Moves,
  strikes: SVGElement,
): Picture {
  const ground = createGround();
  const shape = createShapeLayer(context, canvas, strikes);
  const marks = createSpinMarks(context.strings);
  const dimensions = createDimensionLayer(context.strings);
  const problems = createProblemMarks(({ source }) => context.post({ type: "reveal", source }));
  const handles = createHandleLayer(context, canvas, moves);
  const plane = svg("g", { class: "plane" }, shape.element, handles.ghost);
  const element = svg("svg", { class: "picture" });
  element.append(ground.grid, marks.under, plane, marks.over, dimensions.element);
  element.append(problems.element, handles.element, ground.scale);
  const updateAhead: Picture["updateAhead"] = (state, size) => {
    const viewport = state.viewport ?? UNPLACED;
    setAttributes(element, { width: size.width, height: size.height });
    setAttributes(plane, { transform: planeTransform(viewport, size) });
    shape.update(state);
    marks.update(state.view?.drawing ?? null, viewport, size, state.units, ringOf(state));
  };
  return {
    element,
    edgeOf: shape.edgeOf,
    updateAhead,
    update: (state, size) => {
      const drawing = state.view?.drawing ?? null;
      const viewport = state.viewport ?? UNPLACED;
      updateAhead(state, size);
      ground.update(viewport, size, state.units);
      dimensions.update(state.toggles.dimensions ? drawing : null, viewport, size, state.units);
      problems.update(state, viewport, size);
      handles.update(state, viewport, size);
    },
  };
}

/** Shows the plane before a first drawing has placed it. */
const UNPLACED: Viewport = { centre: { x: 0, y: 0 }, pxPerMm: 1, fitted: true };

/** The plane in mm with its y already turned over, put under the viewport. */
function planeTransform({ centre, pxPerMm }: Viewport, { width, height }: Size): string {
  const x = width / 2 - centre.x * pxPerMm;
  const y = height / 2 + centre.y * pxPerMm;
  return `translate(${x.toFixed(3)} ${y.toFixed(3)}) scale(${pxPerMm.toPrecision(9)})`;
}

/**
 * The depth of bite at the speed that is read from the chart. Aside of the axis no circle about it says how far the
 * target gets.
 */
function ringOf({ view, reading }: PageState) {
  const point = reading === null ? undefined : view?.bite?.curve[reading];
  const target = view?.bite?.target;
  const aside = target !== undefined && target.kind !== "face" && target.offsetMm !== 0;
  return point && !aside ? { closingMPerS: point.closingMPerS, depthMm: point.maxMm } : null;
}
