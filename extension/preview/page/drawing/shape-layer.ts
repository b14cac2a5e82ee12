import type { TextRange } from "../../../../geometry/language/text.ts";
import { freshId, keepChildren, setAttributes, svg } from "../../../webview/page/dom.ts";
import { loopsPath, segmentPath } from "../../../webview/page/path-data.ts";
import type { DrawnLoop, DrawnSegment, View } from "../../protocol.ts";
import type { PageContext, PageState } from "../page-state.ts";
import { edgeText } from "./edge-text.ts";

/** One edge as the page lists it. */
export interface Edge {
  readonly segment: DrawnSegment;
  readonly loop: DrawnLoop["kind"];
}

export interface ShapeLayer {
  /** In mm: the caller gives it the transform of the viewport. */
  readonly element: SVGGElement;
  update(state: PageState): void;
  /** The edge that an element of this layer stands for. */
  edgeOf(target: EventTarget | null): Edge | null;
}

/**
 * The bar itself with its edges, and other variants behind it.
 * @param strikes laid between the plate and its edges, kept up by its own part
 */
export function createShapeLayer({ strings }: PageContext, canvas: Element, strikes: SVGElement): ShapeLayer {
  const ghosts = svg("g", { class: "ghosts", "aria-hidden": "true" });
  const plate = svg("path", { class: "plate", "fill-rule": "evenodd", "aria-hidden": "true" });
  const keysId = freshId("edge-keys");
  const keys = svg("desc", { id: keysId }, strings.edgeKeys);
  const edgeGroup = svg("g", {
    class: "edges",
    role: "group",
    "aria-label": strings.edges,
    "aria-describedby": keysId,
  });
  let edges: readonly Edge[] = [];
  let drawn: Pick<PageState, "view" | "units" | "highlight" | "toggles"> | null = null;
  let current = 0;

  edgeGroup.addEventListener("keydown", (event) => {
    const next = neighbour(event.key, current, edges.length);
    if (next === null) return;
    event.preventDefault();
    event.stopPropagation();
    current = next;
    setCurrent(edgeGroup, current);
    const target = edgeGroup.children[current];
    if (target instanceof SVGElement) target.focus();
  });
  // Not on the group itself: Chromium makes an SVG element that listens for focus a stop of the Tab key.
  canvas.addEventListener("focusin", ({ target }) => {
    const index = indexOf(edgeGroup, target);
    if (index < 0) return;
    current = index;
    setCurrent(edgeGroup, current);
  });

  return {
    element: svg("g", { class: "shape" }, keys, ghosts, plate, strikes, edgeGroup),
    edgeOf: (target) => edges[indexOf(edgeGroup, target)] ?? null,
    update: (state) => {
      const { view, units, highlight, toggles } = state;
      if (sameAs(drawn, state)) return;
      drawn = { view, units, highlight, toggles };
      const loops = view?.drawing?.loops ?? [];
      edges = loops.flatMap(({ kind, segments }) => segments.map((segment) => ({ segment, loop: kind })));
      current = Math.min(current, Math.max(0, edges.length - 1));
      updateGhosts(ghosts, toggles.variants ? view : null);
      setAttributes(plate, { d: loopsPath(loops) });
      keepChildren(edgeGroup, edges, createEdge, (element, { segment, loop }, index) => {
        const path = segmentPath(segment);
        for (const line of element.children) setAttributes(line, { d: path });
        setAttributes(element, {
          "aria-label": edgeText(segment, loop, units, strings),
          tabindex: index === current ? 0 : -1,
          class: isMarked(segment, highlight, view) ? "edge marked" : "edge",
        });
      });
    },
  };
}

function sameAs(
  drawn: Pick<PageState, "view" | "units" | "highlight" | "toggles"> | null,
  state: PageState,
): boolean {
  return (
    drawn !== null &&
    drawn.view === state.view &&
    drawn.units === state.units &&
    drawn.highlight === state.highlight &&
    drawn.toggles === state.toggles
  );
}

function createEdge(): SVGGElement {
  return svg(
    "g",
    { role: "button" },
    svg("path", { class: "edge-hit" }),
    svg("path", { class: "edge-line" }),
  );
}

function updateGhosts(parent: SVGGElement, view: View | null): void {
  keepChildren(
    parent,
    view?.ghosts ?? [],
    () => svg("path", { class: "ghost" }),
    (element, { loops }) => setAttributes(element, { d: loopsPath(loops) }),
  );
}

/** Whether the cursor stands in the text that made a segment. The text of a stale drawing has moved: none then. */
function isMarked({ source }: DrawnSegment, highlight: TextRange | null, view: View | null): boolean {
  if (!highlight || view?.stale) return false;
  return source.start <= highlight.end && highlight.start <= source.end;
}

function neighbour(key: string, index: number, count: number): number | null {
  if (count === 0) return null;
  if (key === "ArrowRight" || key === "ArrowDown") return (index + 1) % count;
  if (key === "ArrowLeft" || key === "ArrowUp") return (index + count - 1) % count;
  if (key === "Home") return 0;
  return key === "End" ? count - 1 : null;
}

function setCurrent(parent: Element, current: number): void {
  for (const [index, child] of [...parent.children].entries())
    setAttributes(child, { tabindex: index === current ? 0 : -1 });
}

function indexOf(parent: Element, target: EventTarget | null): number {
  if (!(target instanceof Element)) return -1;
  const edge = target.closest(".edge");
  return edge && edge.parentElement === parent ? [...parent.children].indexOf(edge) : -1;
}
