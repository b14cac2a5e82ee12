import { type BiteProfile, biteProfile } from "../../../../geometry/bite/bite.ts";
import type { View } from "../../protocol.ts";

const known = new WeakMap<View, BiteProfile>();

/** The drawn outline made ready for questions about its bite, once a view and only when one is asked; null without a bite. */
export function shownProfile(view: View | null): BiteProfile | null {
  const segments = view?.drawing?.loops.find(({ kind }) => kind === "outer")?.segments;
  if (!view?.bite || !segments) return null;
  const { direction, target } = view.bite;
  const profile =
    known.get(view) ?? biteProfile({ segments, source: { start: 0, end: 0 } }, direction, target);
  known.set(view, profile);
  return profile;
}
