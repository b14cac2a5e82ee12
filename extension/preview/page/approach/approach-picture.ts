/** The picture of one approach: the bar turned, the target on its way, and at contact how deep it came. */
import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { setAttributes, setHidden, setText, svg } from "../../../webview/page/dom.ts";
import { loopsPath } from "../../../webview/page/path-data.ts";
import { lengthText } from "../../../webview/page/units.ts";
import type { DrawnLoop, PlanePoint } from "../../protocol.ts";
import { arrowHead, away } from "../drawing/mark-paths.ts";
import { fittedInto, type Size, toScreen, type Viewport } from "../viewport.ts";
import { type Approach, type Scene, sceneAt, turnedPoint } from "./scene.ts";

export interface ApproachPicture {
  readonly element: SVGSVGElement;
  /** @param beforeRad how far the bar still turns until contact; 0 for the contact itself */
  draw(shown: Shown): void;
}

interface Shown {
  readonly approach: Approach;
  readonly beforeRad: number;
  readonly loops: readonly DrawnLoop[];
  readonly units: UnitSystem;
  readonly size: Size;
  /** Whether to look closely at where they meet. */
  readonly near: boolean;
}

/** All that a layer needs to know to place itself. */
interface Sight {
  readonly approach: Approach;
  readonly scene: Scene;
  readonly viewport: Viewport;
  readonly size: Size;
  place(point: PlanePoint): PlanePoint;
}

export function createApproachPicture(): ApproachPicture {
  const rim = svg("circle", { class: "approach-rim" });
  const way = svg("path", { class: "approach-way" });
  const plate = svg("path", { class: "approach-bar", "fill-rule": "evenodd" });
  const axis = svg("path", { class: "axis-cross", d: "M-8 0H8M0-8V8" });
  const target = createTarget("approach-target");
  const start = createTarget("approach-start");
  const contact = createContactMarks();
  const element = svg("svg", { class: "picture approach-picture", "aria-hidden": "true" });
  let drawnLoops: readonly DrawnLoop[] | null = null;
  element.append(rim, way, plate, axis, start.element, target.element, contact.element);
  return {
    element,
    draw: ({ approach, beforeRad, loops, units, size, near }) => {
      const scene = sceneAt(approach, beforeRad);
      const viewport = fittedInto(near ? nearBounds(approach) : wholeBounds(approach), size, 0);
      const place = (point: PlanePoint) => toScreen(viewport, size, point);
      const sight: Sight = { approach, scene, viewport, size, place };
      const middle = place({ x: 0, y: 0 });
      const { pxPerMm } = viewport;
      setAttributes(element, { width: size.width, height: size.height });
      setAttributes(rim, {
        cx: px(middle.x),
        cy: px(middle.y),
        r: px(approach.profile.maxRadiusMm * pxPerMm),
      });
      setAttributes(way, { d: wayPath(sight) });
      if (drawnLoops !== loops) {
        drawnLoops = loops;
        setAttributes(plate, { d: loopsPath(loops) });
      }
      const degrees = (-scene.barTurnRad * 180) / Math.PI;
      setAttributes(plate, {
        transform: `translate(${px(middle.x)} ${px(middle.y)}) scale(${pxPerMm.toPrecision(9)}) rotate(${degrees.toFixed(4)})`,
      });
      setAttributes(axis, { transform: `translate(${px(middle.x)} ${px(middle.y)})` });
      target.draw(sight, scene.targetAt);
      start.draw(sight, { x: approach.profile.rimMm, y: scene.targetAt.y });
      contact.draw(sight, beforeRad === 0, units);
    },
  };
}

/** Room to see the bar turn and the target come, in reaches of the bar. */
const [AROUND, AHEAD] = [1.06, 1.5];

type Bounds = readonly [number, number, number, number];

function wholeBounds({ profile: { maxRadiusMm: reach } }: Approach): Bounds {
  return [-AROUND * reach, -AROUND * reach, AHEAD * reach, AROUND * reach];
}

/** As close as leaves the depth two thirds of the height, but not closer than this share of the reach. */
const [NEAR_DEPTHS, NEAREST_SHARE] = [0.75, 0.06];

function nearBounds(approach: Approach): Bounds {
  const { contact, profile } = approach;
  const { targetAt } = sceneAt(approach, 0);
  const half = Math.max(
    NEAR_DEPTHS * contact.depthMm,
    1.6 * profile.target.radiusMm,
    NEAREST_SHARE * profile.maxRadiusMm,
  );
  const x = (contact.alongMm + profile.rimMm) / 2;
  return [x - half, targetAt.y - half, x + half, targetAt.y + half];
}

/** The line on which the target comes. */
function wayPath({ approach: { profile }, scene, size, place }: Sight): string {
  if (profile.target.kind === "face") return "";
  const at = place(scene.targetAt);
  return `M${size.width} ${px(at.y)}H${px(at.x)}`;
}

/** How far the drawn wedge of an edge and the strip of a face reach back from what strikes. */
const [WEDGE_PX, WEDGE_HALF_PX, FACE_PX] = [22, 7, 9];

function createTarget(name: string) {
  const body = svg("path", { class: "target-body" });
  const edge = svg("path", { class: "target-edge" });
  const element = svg("g", { class: name }, body, edge);
  return {
    element,
    draw: ({ approach: { profile }, viewport, size, place }: Sight, targetAt: PlanePoint) => {
      const { x, y } = place(targetAt);
      const { kind, radiusMm } = profile.target;
      if (kind === "face") {
        setAttributes(body, { d: `M${px(x)} 0h${FACE_PX}V${size.height}h${-FACE_PX}Z` });
        setAttributes(edge, { d: `M${px(x)} 0V${size.height}` });
      } else if (kind === "round" && radiusMm > 0) {
        const r = px(radiusMm * viewport.pxPerMm);
        const circle = `M${px(x)} ${px(y)}m${-r} 0a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0Z`;
        setAttributes(body, { d: circle });
        setAttributes(edge, { d: circle });
      } else {
        const wedge = `M${px(x + WEDGE_PX)} ${px(y - WEDGE_HALF_PX)}L${px(x)} ${px(y)}l${WEDGE_PX} ${WEDGE_HALF_PX}`;
        setAttributes(body, { d: `${wedge}Z` });
        setAttributes(edge, { d: wedge });
      }
    },
  };
}

/** The dimension stands this far from the target, on the side that the bar has already swept. */
const DIMENSION_GAP_PX = 26;
const MOTION_PX = 24;

function createContactMarks() {
  const spot = svg("circle", { class: "contact-spot", r: 4.5 });
  const motion = svg("path", { class: "contact-motion" });
  const head = svg("path", { class: "contact-head" });
  const line = svg("path", { class: "contact-dimension" });
  const label = svg("text", { class: "dimension-label" });
  const element = svg("g", { class: "contact" }, line, motion, head, spot, label);
  return {
    element,
    draw: (sight: Sight, met: boolean, units: UnitSystem) => {
      const { approach, scene, viewport, size, place } = sight;
      const { contact, profile } = approach;
      setHidden(element, !met || contact.point === null);
      if (!met || contact.point === null) return;
      const struck = turnedPoint(contact.point, scene.barTurnRad);
      const at = place(struck);
      setAttributes(spot, { cx: px(at.x), cy: px(at.y) });
      const ccw = profile.direction === "ccw";
      const heading = Math.atan2(struck.y, struck.x) + (ccw ? 1 : -1) * (Math.PI / 2);
      const tip = away(at, MOTION_PX, heading);
      setAttributes(motion, { d: `M${px(at.x)} ${px(at.y)}L${px(tip.x)} ${px(tip.y)}` });
      setAttributes(head, { d: arrowHead(tip, heading) });
      const target = place(scene.targetAt);
      const start = place({ x: profile.rimMm, y: scene.targetAt.y });
      const from = profile.target.kind === "face" ? at.y : target.y;
      const gap = DIMENSION_GAP_PX + profile.target.radiusMm * viewport.pxPerMm;
      const y = Math.min(size.height - 8, Math.max(14, from + (ccw ? -gap : gap)));
      const post = (x: number) => `M${px(x)} ${px(from)}V${px(y + (ccw ? -5 : 5))}`;
      const slash = (x: number) => `M${px(x - 4)} ${px(y + 4)}l8 -8`;
      setAttributes(line, {
        d: `${post(target.x)}${post(start.x)}M${px(target.x)} ${px(y)}H${px(start.x)}${slash(target.x)}${slash(start.x)}`,
      });
      setAttributes(label, { x: px(start.x + 9), y: px(y + 4) });
      setText(label, lengthText(contact.depthMm, units));
    },
  };
}

/** Hundredths of a px. */
function px(value: number): number {
  return Math.round(value * 100) / 100;
}
