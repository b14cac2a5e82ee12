/** What turns: the spin axis, the circle the tips run on, the direction of spin, the centroid and the heavy side. */
import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { setAttributes, setHidden, setText, svg } from "../../../webview/page/dom.ts";
import { degreesText, lengthText, speedText } from "../../../webview/page/units.ts";
import type { Drawing, PlanePoint } from "../../protocol.ts";
import { fill, type PreviewStrings } from "../../strings.ts";
import { type Size, toScreen, type Viewport } from "../viewport.ts";
import { arrowHead, away, pair, ticks, tipMark } from "./mark-paths.ts";

export interface BiteRing {
  readonly closingMPerS: number;
  readonly depthMm: number;
}

export interface SpinMarks {
  /** Drawn under the bar: the swept disc and its rim. */
  readonly under: SVGGElement;
  /** Drawn over the bar. */
  readonly over: SVGGElement;
  update(
    drawing: Drawing | null,
    viewport: Viewport,
    size: Size,
    units: UnitSystem,
    ring: BiteRing | null,
  ): void;
}

/** One mark: hidden without a drawing, else put where it belongs. */
interface Mark {
  readonly element: SVGElement;
  update(sight: Sight): void;
}

/** A drawing as it stands on the screen, in px. */
interface Sight {
  readonly drawing: Drawing;
  readonly units: UnitSystem;
  readonly middle: PlanePoint;
  readonly radius: number;
  readonly pxPerMm: number;
  readonly ring: BiteRing | null;
  place(point: PlanePoint): PlanePoint;
}

export function createSpinMarks(strings: PreviewStrings): SpinMarks {
  const under = [createSwept(), createRim(strings), createTicks(), createSpinArrow(strings)];
  const over = [
    createBiteRing(strings),
    createTips(),
    createAxis(strings),
    createHeavyArrow(strings),
    createCentroid(strings),
  ];
  const group = (name: string, marks: readonly Mark[]) =>
    svg("g", { class: name, "aria-hidden": "true" }, ...marks.map(({ element }) => element));
  return {
    under: group("spin-under", under),
    over: group("spin-over", over),
    update: (drawing, viewport, size, units, ring) => {
      const place = (point: PlanePoint) => toScreen(viewport, size, point);
      const { pxPerMm } = viewport;
      for (const mark of [...under, ...over]) {
        setHidden(mark.element, drawing === null);
        if (!drawing) continue;
        const radius = drawing.maxRadiusMm * pxPerMm;
        mark.update({ drawing, units, ring, place, pxPerMm, radius, middle: place({ x: 0, y: 0 }) });
      }
    },
  };
}

function createSwept(): Mark {
  const element = svg("circle", { class: "swept" });
  return { element, update: ({ middle, radius }) => placeCircle(element, middle, radius) };
}

function createRim(strings: PreviewStrings): Mark {
  const title = svg("title");
  const element = svg("circle", { class: "rim" }, title);
  return {
    element,
    update: ({ middle, radius, drawing, units }) => {
      placeCircle(element, middle, radius);
      setText(title, fill(strings.tipCircle, lengthText(drawing.maxRadiusMm, units)));
    },
  };
}

/** A rim smaller than this has no room for ticks. */
const LEAST_TICKED_PX = 30;

function createTicks(): Mark {
  const element = svg("path", { class: "rim-ticks" });
  return {
    element,
    update: ({ middle, radius }) => {
      setAttributes(element, { d: ticks(middle, radius) });
      setHidden(element, radius < LEAST_TICKED_PX);
    },
  };
}

const ARROW_GAP_PX = 18;
const ARROW_FROM_RAD = (33 * Math.PI) / 180;
const ARROW_TO_RAD = (60 * Math.PI) / 180;

/** A curved arrow outside the rim, up on the right. */
function createSpinArrow(strings: PreviewStrings): Mark {
  const title = svg("title");
  const arrow = createArrow("spin-arrow", "spin-line", title);
  return {
    element: arrow.element,
    update: ({ drawing: { direction }, middle, radius }) => {
      setHidden(arrow.element, direction === null);
      if (direction === null) return;
      const ccw = direction === "ccw";
      const [startRad, endRad] = ccw ? [ARROW_FROM_RAD, ARROW_TO_RAD] : [ARROW_TO_RAD, ARROW_FROM_RAD];
      const r = radius + ARROW_GAP_PX;
      const end = away(middle, r, endRad);
      const arc = `A${r.toFixed(2)} ${r.toFixed(2)} 0 0 ${ccw ? 0 : 1} ${pair(end)}`;
      arrow.draw(`M${pair(away(middle, r, startRad))}${arc}`, end, endRad + (ccw ? 1 : -1) * (Math.PI / 2));
      setText(title, ccw ? strings.spinCcw : strings.spinCw);
    },
  };
}

function createBiteRing(strings: PreviewStrings): Mark {
  const title = svg("title");
  const element = svg("circle", { class: "bite-ring" }, title);
  return {
    element,
    update: ({ ring, drawing, middle, pxPerMm, units }) => {
      setHidden(element, ring === null);
      if (!ring) return;
      placeCircle(element, middle, Math.max(0, drawing.maxRadiusMm - ring.depthMm) * pxPerMm);
      const depth = lengthText(ring.depthMm, units);
      setText(title, fill(strings.biteRing, speedText(ring.closingMPerS, units), depth));
    },
  };
}

function createTips(): Mark {
  const element = svg("path", { class: "tips" });
  return {
    element,
    update: ({ drawing, middle, place }) => {
      setAttributes(element, { d: drawing.tips.map((tip) => tipMark(place(tip), middle)).join("") });
    },
  };
}

function createAxis(strings: PreviewStrings): Mark {
  const cross = "M-16 0H-5M5 0H16M0-16V-5M0 5V16M-1.5 0H1.5M0-1.5V1.5";
  const element = svg("path", { class: "axis-cross", d: cross }, svg("title", {}, strings.spinAxis));
  return { element, update: ({ middle }) => placeAt(element, middle) };
}

/** The sign that drawings use for a centre of mass: a circle of four quarters, two of them filled. */
function createCentroid(strings: PreviewStrings): Mark {
  const element = svg(
    "g",
    { class: "centroid" },
    svg("title", {}, strings.centroid),
    svg("circle", { class: "centroid-back", r: 6 }),
    svg("path", { class: "centroid-fill", d: "M0 0V-6A6 6 0 0 1 6 0H-6A6 6 0 0 0 0 6Z" }),
    svg("circle", { class: "centroid-edge", r: 6 }),
  );
  return {
    element,
    update: ({ drawing: { centroid }, place }) => {
      setHidden(element, centroid === null);
      if (centroid) placeAt(element, place(centroid));
    },
  };
}

/** Room for the axis cross. */
const HEAVY_START_PX = 9;
const LEAST_HEAVY_PX = 5;

/**
 * The arrow to the heavy side: half its room at the limit of the grade, the whole for ever more, gone where nothing is to
 * be balanced any more. Without a known limit it stands at half.
 */
function createHeavyArrow(strings: PreviewStrings): Mark {
  const title = svg("title");
  const arrow = createArrow("heavy", "heavy-line", title);
  return {
    element: arrow.element,
    update: ({ drawing: { imbalanceDeg, imbalanceShare, balanced, finelyBalanced }, middle, radius }) => {
      const share = imbalanceShare ?? 1;
      const length = 0.8 * (radius - HEAVY_START_PX) * (share / (1 + share));
      const seen = imbalanceDeg !== null && !finelyBalanced && length >= LEAST_HEAVY_PX;
      setHidden(arrow.element, !seen);
      if (!seen) return;
      const angle = (imbalanceDeg * Math.PI) / 180;
      const end = away(middle, HEAVY_START_PX + length, angle);
      arrow.draw(`M${pair(away(middle, HEAVY_START_PX, angle))}L${pair(end)}`, end, angle);
      setAttributes(arrow.element, { class: balanced === false ? "heavy over-grade" : "heavy" });
      setText(title, fill(strings.heavySide, degreesText(angle)));
    },
  };
}

/** A shaft and, at its end, a head. */
function createArrow(name: string, lineName: string, title: SVGTitleElement) {
  const line = svg("path", { class: lineName });
  const head = svg("path", { class: "arrow-head" });
  return {
    element: svg("g", { class: name }, title, line, head),
    draw: (shaft: string, end: PlanePoint, headingRad: number) => {
      setAttributes(line, { d: shaft });
      setAttributes(head, { d: arrowHead(end, headingRad) });
    },
  };
}

function placeAt(element: SVGElement, { x, y }: PlanePoint): void {
  setAttributes(element, { transform: `translate(${x.toFixed(2)} ${y.toFixed(2)})` });
}

function placeCircle(circle: SVGCircleElement, { x, y }: PlanePoint, radius: number): void {
  setAttributes(circle, { cx: x.toFixed(2), cy: y.toFixed(2), r: radius.toFixed(2) });
}
