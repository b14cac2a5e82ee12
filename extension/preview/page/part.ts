import type { PageState } from "./page-state.ts";

/** A part of the page: its element, and how it follows the state. */
export interface Part<E extends Element = HTMLElement> {
  readonly element: E;
  update(state: PageState): void;
}
