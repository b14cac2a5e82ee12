/** Zoom and pan of the drawing by wheel, drag, pinch and keys. */
import type { PlanePoint } from "../../protocol.ts";
import { panned, type Size, type Viewport, zoomedAbout } from "../viewport.ts";

export interface Camera {
  viewport(): Viewport | null;
  size(): Size;
  show(viewport: Viewport): void;
  fit(): void;
}

export interface Gestures {
  /** True from a drag's beginning until the click that ends it has passed: such a click means nothing else. */
  dragging(): boolean;
}

const ZOOM_STEP = 1.25;
const PAN_STEP_PX = 40;

/** A hand that holds a button down trembles so far. */
const TREMBLE_PX = 4;

export function followGestures(canvas: HTMLElement, camera: Camera): Gestures {
  canvas.addEventListener("wheel", (event) => zoomByWheel(event, canvas, camera), { passive: false });
  canvas.addEventListener("keydown", (event) => {
    if (moveByKey(event, camera)) event.preventDefault();
  });
  return followPointers(canvas, camera);
}

export function zoomBy(camera: Camera, factor: number, at?: PlanePoint): void {
  const viewport = camera.viewport();
  const { width, height } = camera.size();
  if (viewport)
    camera.show(zoomedAbout(viewport, { width, height }, factor, at ?? { x: width / 2, y: height / 2 }));
}

export const zoomIn = (camera: Camera): void => zoomBy(camera, ZOOM_STEP);
export const zoomOut = (camera: Camera): void => zoomBy(camera, 1 / ZOOM_STEP);

/** What one unit of a wheel's travel is worth: pixels, lines, pages. */
const PX_BY_DELTA_MODE: readonly number[] = [1, 16, 400];

function zoomByWheel(event: WheelEvent, canvas: HTMLElement, camera: Camera): void {
  event.preventDefault();
  // Lines and pages as px; a pinch on a touchpad comes as a wheel with Ctrl and in smaller steps.
  const px = event.deltaY * (PX_BY_DELTA_MODE[event.deltaMode] ?? 1);
  zoomBy(camera, Math.exp(-px * (event.ctrlKey ? 0.01 : 0.0016)), within(canvas, event));
}

function moveByKey(event: KeyboardEvent, camera: Camera): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const pan = PAN_BY_KEY[event.key];
  const viewport = camera.viewport();
  if (pan && event.target === event.currentTarget) {
    if (viewport) camera.show(panned(viewport, pan.x * PAN_STEP_PX, pan.y * PAN_STEP_PX));
    return true;
  }
  const command = COMMAND_BY_KEY[event.key];
  command?.(camera);
  return command !== undefined;
}

/** The arrow says where to look: the sheet goes the other way. */
const PAN_BY_KEY: Readonly<Record<string, PlanePoint>> = {
  ArrowLeft: { x: 1, y: 0 },
  ArrowRight: { x: -1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

const COMMAND_BY_KEY: Readonly<Record<string, (camera: Camera) => void>> = {
  "+": zoomIn,
  "=": zoomIn,
  "-": zoomOut,
  _: zoomOut,
  "0": (camera) => camera.fit(),
  f: (camera) => camera.fit(),
  F: (camera) => camera.fit(),
};

interface Touch {
  readonly start: PlanePoint;
  at: PlanePoint;
}

function followPointers(canvas: HTMLElement, camera: Camera): Gestures {
  const touches = new Map<number, Touch>();
  let moved = false;

  canvas.addEventListener("pointerdown", (event) => {
    if (event.button > 1) return;
    if (touches.size === 0) moved = false;
    touches.set(event.pointerId, { start: within(canvas, event), at: within(canvas, event) });
  });
  canvas.addEventListener("pointermove", (event) => {
    const touch = touches.get(event.pointerId);
    if (!touch) return;
    const at = within(canvas, event);
    if (!moved && distance(touch.start, at) < TREMBLE_PX && touches.size === 1) return;
    if (!moved) {
      moved = true;
      // Only now: a pointer captured at once would take the click away from the edge under it.
      canvas.setPointerCapture(event.pointerId);
    }
    followTouch(touches, touch, at, camera);
  });
  const lift = (event: PointerEvent) => {
    touches.delete(event.pointerId);
  };
  canvas.addEventListener("pointerup", lift);
  canvas.addEventListener("pointercancel", lift);
  return { dragging: () => moved };
}

function followTouch(
  touches: ReadonlyMap<number, Touch>,
  touch: Touch,
  at: PlanePoint,
  camera: Camera,
): void {
  const viewport = camera.viewport();
  const before = touch.at;
  touch.at = at;
  if (!viewport) return;
  const other = [...touches.values()].find((candidate) => candidate !== touch);
  if (!other) {
    camera.show(panned(viewport, at.x - before.x, at.y - before.y));
    return;
  }
  const factor = distance(at, other.at) / Math.max(distance(before, other.at), 1);
  const middle = { x: (at.x + other.at.x) / 2, y: (at.y + other.at.y) / 2 };
  const zoomed = zoomedAbout(viewport, camera.size(), factor, middle);
  camera.show(panned(zoomed, (at.x - before.x) / 2, (at.y - before.y) / 2));
}

/** The place of a pointer in px from an element's top left corner. */
export function within(element: Element, event: MouseEvent): PlanePoint {
  const { left, top } = element.getBoundingClientRect();
  return { x: event.clientX - left, y: event.clientY - top };
}

function distance(a: PlanePoint, b: PlanePoint): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
