/** What turns: the spin axis, the circle the tips run on, the direction of spin, the centroid and the heavy side. */
import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import type { Drawing, PlanePoint } from "../../protocol.ts";
import { fill, type PreviewStrings } from "../../strings.ts";
import { setAttributes, setHidden, setText, svg } from "../dom.ts";
import { degreesText, lengthText, speedText } from "../units.ts";
import { type Size, toScreen, type Viewport } from "../viewport.ts";

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

export function createSpinMarks(strings: PreviewStrings): SpinMarks {
  const swept = svg("circle", { class: "swept" });
  const rimTitle = svg("title");
  const rim = svg("circle", { class: "rim" }, rimTitle);
  const ticks = svg("path", { class: "rim-ticks" });
  const arrowTitle = svg("title");
  const arrow = svg(
    "g",
    { class: "spin-arrow" },
    arrowTitle,
    svg("path", { class: "spin-line" }),
    svg("path", { class: "arrow-head" }),
  );
  const biteTitle = svg("title");
  const bite = svg("circle", { class: "bite-ring" }, biteTitle);
  const tips = svg("path", { class: "tips" });
  const axis = titled(
    svg("path", { class: "axis-cross", d: "M-16 0H-5M5 0H16M0-16V-5M0 5V16M-1.5 0H1.5M0-1.5V1.5" }),
    strings.spinAxis,
  );
  const centroid = titled(centroidSign(), strings.centroid);
  const heavyTitle = svg("title");
  const heavy = svg(
    "g",
    { class: "heavy" },
    heavyTitle,
    svg("path", { class: "heavy-line" }),
    svg("path", { class: "arrow-head" }),
  );

  return {
    under: svg("g", { class: "spin-under", "aria-hidden": "true" }, swept, rim, ticks, arrow),
    over: svg("g", { class: "spin-over", "aria-hidden": "true" }, bite, tips, axis, heavy, centroid),
    update: (drawing, viewport, size, units, ring) => {
      const all = [swept, rim, ticks, arrow, bite, tips, axis, centroid, heavy];
      if (!drawing) {
        for (const mark of all) setHidden(mark, true);
        return;
      }
      const place = (point: PlanePoint) => toScreen(viewport, size, point);
      const middle = place({ x: 0, y: 0 });
      const radius = drawing.maxRadiusMm * viewport.pxPerMm;
      for (const circle of [swept, rim]) placeCircle(circle, middle, radius);
      setText(rimTitle, fill(strings.tipCircle, lengthText(drawing.maxRadiusMm, units)));
      setAttributes(ticks, { d: tickPath(middle, radius) });
      setHidden(ticks, radius < 30);
      placeSpinArrow(arrow, drawing.direction, middle, radius);
      setText(arrowTitle, drawing.direction === "cw" ? strings.spinCw : strings.spinCcw);
      setAttributes(tips, { d: drawing.tips.map((tip) => tipPath(place(tip), middle)).join("") });
      placeAt(axis, middle);
      setHidden(centroid, drawing.centroid === null);
      if (drawing.centroid) placeAt(centroid, place(drawing.centroid));
      placeHeavyArrow(heavy, drawing, middle, radius);
      setText(
        heavyTitle,
        fill(strings.heavySide, degreesText(((drawing.imbalanceDeg ?? 0) * Math.PI) / 180)),
      );
      setHidden(bite, ring === null);
      if (ring) {
        placeCircle(bite, middle, Math.max(0, drawing.maxRadiusMm - ring.depthMm) * viewport.pxPerMm);
        setText(
          biteTitle,
          fill(strings.biteRing, speedText(ring.closingMPerS, units), lengthText(ring.depthMm, units)),
        );
      }
      for (const mark of [swept, rim, tips, axis]) setHidden(mark, false);
    },
  };
}

function titled<E extends SVGElement>(element: E, text: string): E {
  element.prepend(svg("title", {}, text));
  return element;
}

/** The sign that drawings use for a centre of mass: a circle of four quarters, two of them filled. */
function centroidSign(): SVGGElement {
  return svg(
    "g",
    { class: "centroid" },
    svg("circle", { class: "centroid-back", r: 6 }),
    svg("path", { class: "centroid-fill", d: "M0 0V-6A6 6 0 0 1 6 0H-6A6 6 0 0 0 0 6Z" }),
    svg("circle", { class: "centroid-edge", r: 6 }),
  );
}

function placeAt(element: SVGElement, { x, y }: PlanePoint): void {
  setAttributes(element, { transform: `translate(${x.toFixed(2)} ${y.toFixed(2)})` });
}

function placeCircle(circle: SVGCircleElement, { x, y }: PlanePoint, radius: number): void {
  setAttributes(circle, { cx: x.toFixed(2), cy: y.toFixed(2), r: radius.toFixed(2) });
}

/** A point at a distance and direction from another on the screen, where y goes down. */
function away({ x, y }: PlanePoint, radius: number, angleRad: number): PlanePoint {
  return { x: x + radius * Math.cos(angleRad), y: y - radius * Math.sin(angleRad) };
}

function pair({ x, y }: PlanePoint): string {
  return `${x.toFixed(2)} ${y.toFixed(2)}`;
}

/** A tick outside the rim each 15°, longer each 45°, longest on the axes. */
function tickPath(middle: PlanePoint, radius: number): string {
  const ticks = Array.from({ length: 24 }, (_, index) => {
    const angle = (index * Math.PI) / 12;
    const length = index % 6 === 0 ? 10 : index % 3 === 0 ? 7 : 4;
    return `M${pair(away(middle, radius + 2, angle))}L${pair(away(middle, radius + 2 + length, angle))}`;
  });
  return ticks.join("");
}

const ARROW_GAP_PX = 18;
const ARROW_FROM_RAD = (33 * Math.PI) / 180;
const ARROW_TO_RAD = (60 * Math.PI) / 180;

/** A curved arrow outside the rim, up on the right. */
function placeSpinArrow(
  arrow: SVGGElement,
  direction: Drawing["direction"],
  middle: PlanePoint,
  radius: number,
): void {
  setHidden(arrow, direction === null);
  if (direction === null) return;
  const ccw = direction === "ccw";
  const [startRad, endRad] = ccw ? [ARROW_FROM_RAD, ARROW_TO_RAD] : [ARROW_TO_RAD, ARROW_FROM_RAD];
  const r = radius + ARROW_GAP_PX;
  const [start, end] = [away(middle, r, startRad), away(middle, r, endRad)];
  const heading = endRad + (ccw ? Math.PI / 2 : -Math.PI / 2);
  drawArrow(
    arrow,
    `M${pair(start)}A${r.toFixed(2)} ${r.toFixed(2)} 0 0 ${ccw ? 0 : 1} ${pair(end)}`,
    end,
    heading,
  );
}

const HEAD_PX = 10;

/** The shaft and, at its end, a head that points along `headingRad`. */
function drawArrow(arrow: SVGGElement, shaft: string, end: PlanePoint, headingRad: number): void {
  const [line, head] = arrow.querySelectorAll("path");
  if (line) setAttributes(line, { d: shaft });
  const point = away(end, HEAD_PX, headingRad);
  const wings = [1, -1].map((side) => away(end, HEAD_PX / 2, headingRad + (side * Math.PI) / 2));
  if (head) setAttributes(head, { d: `M${pair(point)}L${wings.map(pair).join("L")}Z` });
}

/** A short mark across the rim where a tip runs. */
function tipPath(tip: PlanePoint, middle: PlanePoint): string {
  const angle = Math.atan2(middle.y - tip.y, tip.x - middle.x);
  return `M${pair(away(tip, -5, angle))}L${pair(away(tip, 9, angle))}`;
}

/** Room for the axis cross. */
const HEAVY_START_PX = 9;
const LEAST_HEAVY_PX = 5;

/**
 * The arrow to the heavy side: half its room at the limit of the grade, the whole for ever more, gone where there is
 * nothing to speak of. Without a known limit it stands at half.
 */
function placeHeavyArrow(heavy: SVGGElement, drawing: Drawing, middle: PlanePoint, radius: number): void {
  const { imbalanceDeg, imbalanceShare, balanced } = drawing;
  const share = imbalanceShare ?? 1;
  const length = 0.8 * (radius - HEAVY_START_PX) * (share / (1 + share));
  const seen = imbalanceDeg !== null && length >= LEAST_HEAVY_PX;
  setHidden(heavy, !seen);
  if (!seen) return;
  const angle = (imbalanceDeg * Math.PI) / 180;
  const end = away(middle, HEAVY_START_PX + length, angle);
  setAttributes(heavy, { class: balanced === false ? "heavy over-grade" : "heavy" });
  drawArrow(heavy, `M${pair(away(middle, HEAVY_START_PX, angle))}L${pair(end)}`, end, angle);
}
