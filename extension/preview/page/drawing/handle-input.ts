/** How pointers and keys move a point. */
import type { Handle, PlanePoint } from "../../protocol.ts";
import type { PageState } from "../page-state.ts";
import { toPlane, toScreen } from "../viewport.ts";
import { within } from "./gestures.ts";
import { type Moves, movableHandles } from "./moves.ts";

export interface HandleInput {
  readonly group: SVGGElement;
  /** The element whose corner the screen points are counted from. */
  readonly canvas: Element;
  readonly moves: Moves;
  state(): PageState;
  handleAt(target: EventTarget | null): Handle | null;
  focus(index: number): void;
}

/** Drag: the point stays under the place where it was gripped. */
export function followHandlePointer(input: HandleInput): void {
  const { group, canvas, moves } = input;
  let grip: { readonly pointer: number; readonly offset: PlanePoint } | null = null;

  group.addEventListener("pointerdown", (event) => {
    const handle = input.handleAt(event.target);
    const { viewport, view } = input.state();
    if (!handle || !viewport || event.button !== 0) return;
    event.stopPropagation();
    const px = within(canvas, event);
    const at = toScreen(viewport, sizeOf(canvas), handle.at);
    grip = { pointer: event.pointerId, offset: { x: at.x - px.x, y: at.y - px.y } };
    group.setPointerCapture(event.pointerId);
    input.focus(movableHandles(view).indexOf(handle));
    moves.takeUp(handle, "pointer");
  });
  group.addEventListener("pointermove", (event) => {
    const { viewport } = input.state();
    if (!grip || !viewport || event.pointerId !== grip.pointer) return;
    const { x, y } = within(canvas, event);
    const place = { x: x + grip.offset.x, y: y + grip.offset.y };
    moves.pull(toPlane(viewport, sizeOf(canvas), place), event.shiftKey);
  });
  const letGo = (event: PointerEvent, finish: () => void) => {
    if (event.pointerId !== grip?.pointer) return;
    grip = null;
    finish();
  };
  group.addEventListener("pointerup", (event) => letGo(event, moves.putDown));
  group.addEventListener("pointercancel", (event) => letGo(event, moves.putBack));
  // While a pointer holds a point, the keyboard's focus may have gone anywhere.
  window.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || grip === null) return;
    grip = null;
    moves.putBack();
  });
}

const ARROWS: Readonly<Record<string, PlanePoint>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

/** Arrows move, Enter puts down, Escape or leaving puts back, Page Up and Page Down go from point to point. */
export function followHandleKeys(input: HandleInput): void {
  const { group, moves } = input;
  group.addEventListener("keydown", (event) => {
    const handle = input.handleAt(event.target);
    if (!handle || event.ctrlKey || event.metaKey || event.altKey) return;
    if (!followKey(event, handle, input)) return;
    event.preventDefault();
    event.stopPropagation();
  });
  // Not on the group itself: Chromium makes an SVG element that listens for focus a stop of the Tab key.
  input.canvas.addEventListener("focusout", () => {
    if (moves.now()?.by === "keys") moves.putBack();
  });
}

function followKey({ key, shiftKey }: KeyboardEvent, handle: Handle, input: HandleInput): boolean {
  const { moves } = input;
  const arrow = ARROWS[key];
  const handles = movableHandles(input.state().view);
  const index = handles.indexOf(handle);
  if (arrow) moves.nudge(handle, arrow, shiftKey);
  else if (key === "PageDown") input.focus((index + 1) % handles.length);
  else if (key === "PageUp") input.focus((index + handles.length - 1) % handles.length);
  else if (key === "Enter") moves.putDown();
  else if (key === "Escape" && moves.now()) moves.putBack();
  else return false;
  return true;
}

function sizeOf(canvas: Element): { width: number; height: number } {
  return { width: canvas.clientWidth, height: canvas.clientHeight };
}
