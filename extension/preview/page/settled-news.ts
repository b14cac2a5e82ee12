import type { PageContext, PageState } from "./page-state.ts";
import type { Part } from "./part.ts";

/** Long enough that a half typed line does not speak, short enough to still belong to what was typed. */
const SETTLED_MS = 1500;

/**
 * Tells those who do not see the page when the drawing has become stale or follows the text again: once the text has
 * rested, not with every key.
 */
export function createSettledNews({ strings, announce, state }: PageContext): Pick<Part, "update"> {
  let told = false;
  let timer = 0;
  let seen: PageState["view"] = null;
  return {
    update: ({ view }) => {
      if (view === seen) return;
      seen = view;
      window.clearTimeout(timer);
      timer = window.setTimeout(() => {
        const stale = state().view?.stale ?? false;
        if (stale === told) return;
        told = stale;
        announce(stale ? strings.stale : strings.liveAgain);
      }, SETTLED_MS);
    },
  };
}
