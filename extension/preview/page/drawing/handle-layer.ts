/** The points of the text on the drawing, to be dragged or moved by keys. */
import type { UnitSystem } from "../../../../geometry/figures/present.ts";
import { freshId, keepChildren, setAttributes, setHidden, svg } from "../../../webview/page/dom.ts";
import { coordinates } from "../../../webview/page/units.ts";
import type { Handle, PlanePoint } from "../../protocol.ts";
import { fill, type PreviewStrings } from "../../strings.ts";
import type { PageContext, PageState } from "../page-state.ts";
import { type Size, toScreen, type Viewport } from "../viewport.ts";
import { followHandleKeys, followHandlePointer } from "./handle-input.ts";
import { awayFromPlace, type Moves, movableHandles } from "./moves.ts";
import { touchedPath } from "./touched-path.ts";

export interface HandleLayer {
  /** The points themselves, in px. */
  readonly element: SVGGElement;
  /** The edges as they would run, in mm: the caller gives it the transform of the viewport. */
  readonly ghost: SVGPathElement;
  update(state: PageState, viewport: Viewport, size: Size): void;
}

export function createHandleLayer(context: PageContext, canvas: Element, moves: Moves): HandleLayer {
  const { strings } = context;
  const keysId = freshId("point-keys");
  const keys = svg("desc", { id: keysId }, strings.pointKeys);
  const group = svg("g", { class: "handles", role: "group", "aria-label": strings.points });
  const guide = svg("path", { class: "move-guide" });
  const ghost = svg("path", { class: "move-ghost", "aria-hidden": "true" });
  const input = {
    group,
    canvas,
    moves,
    state: context.state,
    handleAt: (target: EventTarget | null) =>
      movableHandles(context.state().view)[indexOf(group, target)] ?? null,
    focus: (index: number) => focusChild(group, index),
  };
  followHandlePointer(input);
  followHandleKeys(input);

  return {
    element: svg("g", {}, keys, guide, group),
    ghost,
    update: (state, viewport, size) => {
      const { view, toggles, highlight, units, pendingMove } = state;
      moves.follow(view);
      const shown = toggles.points ? movableHandles(view) : [];
      const away = awayFromPlace(moves.now(), pendingMove, view);
      keepChildren(group, shown, createHandle, (node, handle, index) => {
        const at = away?.id === handle.id ? away.to : handle.at;
        setAttributes(node, {
          class: handleClass(handle, away?.id === handle.id, highlight),
          transform: translation(toScreen(viewport, size, at)),
          "aria-label": handleText(handle, at, index, units, strings),
          "aria-describedby": keysId,
        });
      });
      keepOneTabStop(group);
      for (const path of [ghost, guide]) setHidden(path, away === null);
      if (!away) return;
      setAttributes(ghost, { d: touchedPath(view?.drawing?.loops ?? [], away.from, away.to) });
      const [a, b] = [toScreen(viewport, size, away.from), toScreen(viewport, size, away.to)];
      setAttributes(guide, { d: `M${pair(a)}L${pair(b)}` });
    },
  };
}

/** A diamond where it moves both ways, flattened to the way it moves where it is only one. */
function createHandle(): SVGGElement {
  return svg(
    "g",
    { role: "button", tabindex: -1 },
    svg("circle", { class: "handle-hit", r: 10 }),
    svg("path", { class: "handle-body", d: "M0-5.5L5.5 0L0 5.5L-5.5 0Z" }),
  );
}

function handleClass(
  { movesX, movesY, source }: Handle,
  moving: boolean,
  highlight: PageState["highlight"],
): string {
  const marked = highlight && source.start <= highlight.end && highlight.start <= source.end;
  const ways = movesX && movesY ? "" : movesX ? "only-x" : "only-y";
  return ["handle", ways, marked ? "marked" : "", moving ? "moving" : ""].filter(Boolean).join(" ");
}

function handleText(
  { movesX, movesY }: Handle,
  at: PlanePoint,
  index: number,
  units: UnitSystem,
  strings: PreviewStrings,
): string {
  const text = fill(strings.point, index + 1, ...coordinates(at, units));
  if (movesX && movesY) return text;
  return `${text}. ${movesX ? strings.pointOnlyX : strings.pointOnlyY}`;
}

/** The group is one stop of the Tab key: at the point that had the focus last, else at the first. */
function keepOneTabStop(group: Element): void {
  const children = [...group.children];
  if (children.length === 0 || children.some((child) => child.getAttribute("tabindex") === "0")) return;
  children[0]?.setAttribute("tabindex", "0");
}

function focusChild(group: Element, index: number): void {
  for (const [place, child] of [...group.children].entries())
    setAttributes(child, { tabindex: place === index ? 0 : -1 });
  const target = group.children[index];
  if (target instanceof SVGElement) target.focus();
}

function indexOf(group: Element, target: EventTarget | null): number {
  const node = target instanceof Element ? target.closest(".handle") : null;
  return node ? [...group.children].indexOf(node) : -1;
}

function translation(point: PlanePoint): string {
  return `translate(${pair(point)})`;
}

function pair({ x, y }: PlanePoint): string {
  return `${x.toFixed(2)} ${y.toFixed(2)}`;
}
