import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { keepChildren, setAttributes, setText, svg } from "../../../webview/page/dom.ts";
import type { Drawing } from "../../protocol.ts";
import type { PreviewStrings } from "../../strings.ts";
import { type Size, toScreen, type Viewport } from "../viewport.ts";
import { layOutDimensions } from "./dimension-layout.ts";
import { dimensionsOf } from "./dimension-list.ts";

export interface DimensionLayer {
  readonly element: SVGGElement;
  update(drawing: Drawing | null, viewport: Viewport, size: Size, units: UnitSystem): void;
}

/** Dimensions on request. They are for the eye: the drawing in words says the same. */
export function createDimensionLayer(strings: PreviewStrings): DimensionLayer {
  const element = svg("g", { class: "dimensions", "aria-hidden": "true" });
  return {
    element,
    update: (drawing, viewport, size, units) => {
      const dimensions = drawing ? dimensionsOf(drawing, units, strings) : [];
      const top = toScreen(viewport, size, { x: 0, y: drawing?.boundsMm[3] ?? 0 }).y;
      const laid = layOutDimensions(dimensions, (point) => toScreen(viewport, size, point), top, size);
      keepChildren(element, laid, createDimension, (group, { path, text, ...label }) => {
        const [line, words] = group.children;
        if (line) setAttributes(line, { d: path });
        if (!words) return;
        setAttributes(words, { ...label });
        setText(words, text);
      });
    },
  };
}

function createDimension(): SVGGElement {
  return svg("g", { class: "dimension" }, svg("path"), svg("text", { class: "dimension-label" }));
}
