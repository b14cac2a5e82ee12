/** Moving a point: taken up, moved, put down or put back. Knows nothing of pointers, keys or elements. */

import { coordinates } from "../../../webview/page/units.ts";
import type { Handle, PlanePoint, View } from "../../protocol.ts";
import { fill } from "../../strings.ts";
import type { PageContext, PageState } from "../page-state.ts";
import { dragStepMm, nextOnStep, onStep, stepText } from "../steps.ts";

/** A point on its way: by pointer until it is let go, by keys until Enter. */
export interface Move {
  readonly handle: Handle;
  /** Version of the view that the point was taken up in. */
  readonly version: number;
  readonly to: PlanePoint;
  readonly by: "pointer" | "keys";
}

export interface Moves {
  now(): Move | null;
  takeUp(handle: Handle, by: Move["by"]): void;
  /** A drawing that comes while a point is on its way: where the point still stands in it, the move goes on in it. */
  follow(view: View | null): void;
  /** Follow a pointer: on the step nearest to it. */
  pull(to: PlanePoint, fine: boolean): void;
  /** Follow an arrow key: on to the next step. */
  nudge(handle: Handle, arrow: PlanePoint, fine: boolean): void;
  putDown(): void;
  putBack(): void;
  /** What is going on, in words; `null` when nothing is. */
  text(): string | null;
}

export function createMoves(context: PageContext): Moves {
  const { strings } = context;
  let move: Move | null = null;
  let requests = 0;

  const set = (next: Move | null) => {
    move = next;
    context.change({ failed: null });
  };
  const step = (fine: boolean) => {
    const { viewport, units } = context.state();
    return dragStepMm(viewport?.pxPerMm ?? 1, units, fine);
  };
  const text = () => {
    if (!move) return null;
    const { units } = context.state();
    return fill(strings.movingTo, ...coordinates(move.to, units), stepText(step(false), units));
  };
  const takeUp = (handle: Handle, by: Move["by"]) => {
    set({ handle, version: context.state().view?.version ?? 0, to: handle.at, by });
  };

  return {
    now: () => move,
    text,
    takeUp,
    follow: (view) => {
      if (move && view) move = movedInto(move, view);
    },
    pull: (to, fine) => {
      if (move) set({ ...move, to: pulled(move.handle, to, step(fine)) });
    },
    nudge: (handle, arrow, fine) => {
      if (move?.handle.id !== handle.id) takeUp(handle, "keys");
      if (move) set({ ...move, to: nudged(move, arrow, step(fine)) });
      context.announce(text() ?? "");
    },
    putBack: () => {
      if (!move) return;
      set(null);
      context.announce(strings.putBack);
    },
    putDown: () => {
      if (!move) return;
      const { handle, version, to, by } = move;
      set(null);
      if (to.x === handle.at.x && to.y === handle.at.y) {
        // A click that moved nothing asks what this is.
        if (by === "pointer") context.post({ type: "reveal", source: handle.source });
        return;
      }
      requests += 1;
      const moved = { request: requests, version, handle: handle.id, to };
      context.change({ pendingMove: moved });
      context.post({ type: "movePoint", ...moved });
      context.announce(fill(strings.movedTo, ...coordinates(to, context.state().units)));
    },
  };
}

/**
 * The same move in a later view: else it would be refused when the point is put down, though nothing about the point has
 * changed. A point that moved or went stays one of its own view, and the host says why it cannot be moved.
 */
function movedInto(move: Move, view: View): Move {
  if (view.version === move.version) return move;
  const same = movableHandles(view).filter((handle) => isSamePoint(handle, move.handle));
  const handle = same.find(({ id }) => id === move.handle.id) ?? (same.length === 1 ? same[0] : undefined);
  return handle ? { ...move, handle, version: view.version } : move;
}

function isSamePoint(a: Handle, b: Handle): boolean {
  return a.at.x === b.at.x && a.at.y === b.at.y && a.movesX === b.movesX && a.movesY === b.movesY;
}

/** A pointer's place on the nearest step, only along what the text lets the point move. */
function pulled({ at, movesX, movesY }: Handle, to: PlanePoint, stepMm: number): PlanePoint {
  return { x: movesX ? onStep(to.x, stepMm) : at.x, y: movesY ? onStep(to.y, stepMm) : at.y };
}

function nudged({ handle, to }: Move, arrow: PlanePoint, stepMm: number): PlanePoint {
  return {
    x: handle.movesX ? nextOnStep(to.x, arrow.x, stepMm) : to.x,
    y: handle.movesY ? nextOnStep(to.y, arrow.y, stepMm) : to.y,
  };
}

/** What is away from its place: in the hand, or put down and not yet in the text. */
export function awayFromPlace(
  move: Move | null,
  pending: PageState["pendingMove"],
  view: View | null,
): { readonly id: number; readonly from: PlanePoint; readonly to: PlanePoint } | null {
  if (move) return { id: move.handle.id, from: move.handle.at, to: move.to };
  const handle = view?.drawing?.handles.find(({ id }) => id === pending?.handle);
  return pending && handle ? { id: handle.id, from: handle.at, to: pending.to } : null;
}

/** The points of a view that can be taken up. */
export function movableHandles(view: View | null): readonly Handle[] {
  if (!view || view.stale) return [];
  return view.drawing?.handles.filter(({ movesX, movesY }) => movesX || movesY) ?? [];
}
