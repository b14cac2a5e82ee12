import type { UnitSystem } from "../../../geometry/figures/present.ts";
import type { TextRange } from "../../../geometry/language/text.ts";
import type { HostMessage, PageMessage, SavedState, ToggleName, View } from "../protocol.ts";
import type { PreviewStrings } from "../strings.ts";
import type { Viewport } from "./viewport.ts";

/** A dropped point that the host has not answered yet. */
export interface PendingMove {
  readonly request: number;
  readonly version: number;
  readonly handle: number;
  readonly to: { readonly x: number; readonly y: number };
}

/** Everything the page shows, as one value: parts compare with what they drew last. */
export interface PageState {
  readonly view: View | null;
  /** The version of a drawing that is newer than the rest of the view, which is on its way; else null. */
  readonly aheadVersion: number | null;
  readonly units: UnitSystem;
  readonly hostUnits: UnitSystem | null;
  readonly highlight: TextRange | null;
  readonly viewport: Viewport | null;
  readonly toggles: Readonly<Record<ToggleName, boolean>>;
  readonly openSections: readonly string[];
  /** The point of the bite curve that is being read. */
  readonly reading: number | null;
  /** The point that was read last; null before the first. */
  readonly lastRead: number | null;
  readonly pendingMove: PendingMove | null;
  /** What could not be done last, until something else is. */
  readonly failed: string | null;
}

/** What the parts of the page are given: texts, and the ways to ask and to change. */
export interface PageContext {
  readonly strings: PreviewStrings;
  readonly state: () => PageState;
  /** Change the state; the page is drawn anew with the next frame. */
  readonly change: (changes: Partial<PageState>) => void;
  readonly post: (message: PageMessage) => void;
  /** Say something to those who do not see the page. */
  readonly announce: (text: string) => void;
}

/** The point of the curve that is read, else the one read last, else the fastest: strikes are shown for it. */
export function chosenIndex({ view, reading, lastRead }: PageState): number {
  return reading ?? lastRead ?? Math.max(0, (view?.bite?.curve.length ?? 0) - 1);
}

const FIRST_TOGGLES: PageState["toggles"] = {
  dimensions: false,
  variants: true,
  points: true,
  strikes: true,
  explanations: false,
};

const FIRST_OPEN: readonly string[] = ["problems", "mass"];

export function firstState(saved: SavedState | null): PageState {
  return {
    view: null,
    aheadVersion: null,
    units: saved?.units ?? saved?.hostUnits ?? "mm",
    hostUnits: saved?.hostUnits ?? null,
    highlight: null,
    viewport: saved?.viewport ?? null,
    toggles: saved?.toggles ?? FIRST_TOGGLES,
    openSections: saved?.openSections ?? FIRST_OPEN,
    reading: null,
    lastRead: null,
    pendingMove: null,
    failed: null,
  };
}

export function savedState(state: PageState): SavedState {
  const { view, units, hostUnits, viewport, toggles, openSections } = state;
  return {
    documentUri: view?.documentUri ?? null,
    variant: view?.variant ?? null,
    units,
    hostUnits,
    viewport,
    toggles,
    openSections,
  };
}

/**
 * The state after a view has come, or `null` for one that is older than what is shown. Zoom and pan stay; another
 * document starts with its own. A unit that the host asks for newly is taken over, else the reader's choice stays.
 */
export function withView(state: PageState, view: View, hostUnits: UnitSystem): PageState | null {
  const { view: shown, pendingMove } = state;
  const sameDocument = shown?.documentUri === view.documentUri;
  if (shown && sameDocument && view.version < shown.version) return null;
  const stillThere = (index: number | null) =>
    sameDocument && index !== null && index < (view.bite?.curve.length ?? 0) ? index : null;
  const answered = pendingMove !== null && (!sameDocument || view.version > pendingMove.version);
  return {
    ...state,
    view,
    aheadVersion: null,
    hostUnits,
    units: hostUnits === state.hostUnits ? state.units : hostUnits,
    viewport: shown && !sameDocument ? null : state.viewport,
    highlight: sameDocument ? state.highlight : null,
    reading: stillThere(state.reading),
    lastRead: stillThere(state.lastRead),
    pendingMove: answered ? null : pendingMove,
    failed: null,
  };
}

/**
 * The state with the drawing of a view that is on its way, or `null` where it belongs to nothing that is shown: before
 * the first view, for another document or variant, or for an older text.
 */
export function withDrawing(
  state: PageState,
  { version, documentUri, variant, drawing }: Extract<HostMessage, { type: "drawing" }>,
): PageState | null {
  const { view, pendingMove } = state;
  const shownVersion = state.aheadVersion ?? view?.version ?? 0;
  const isOfView = view?.documentUri === documentUri && view.variant === variant && shownVersion < version;
  if (!view || !isOfView) return null;
  const answered = pendingMove !== null && version > pendingMove.version;
  return {
    ...state,
    // The points stay those of the text before, and so does the version that a drag of one names.
    view: { ...view, drawing: { ...drawing, handles: view.drawing?.handles ?? [] }, stale: false },
    aheadVersion: version,
    pendingMove: answered ? null : pendingMove,
  };
}
