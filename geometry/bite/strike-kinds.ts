import { advanceMmPerRad, type BiteCondition } from "./approach.ts";
import { approachLight } from "./approach-light.ts";
import { atRound } from "./at-round.ts";
import { leastAdvance, litAt } from "./bite-at.ts";
import type { BiteProfile } from "./bite-profile.ts";
import type { Lit } from "./light.ts";
import { type LitDepths, litDepths } from "./reach.ts";
import { type Strike, strikesOf } from "./strikes.ts";

/** How a strike lands: square on a tooth, on a tooth but skidding, or on something that is not a tooth. */
export type StrikeKind = "square" | "skidding" | "off";
export const STRIKE_KINDS: readonly StrikeKind[] = ["square", "skidding", "off"];

/** What strikes first at one place in one way. */
export interface KindOfStrike extends Strike {
  readonly kind: StrikeKind;
}

/**
 * What strikes at one closing speed, each place told apart by how it lands there: the shares of the square ones add up
 * to the clean share, those of square and skidding to the share on teeth.
 */
export function strikesByKind(profile: BiteProfile, condition: BiteCondition): KindOfStrike[] {
  const advance = leastAdvance(profile, advanceMmPerRad(condition));
  const byKind = splitByKind(profile, condition.squareStrikeRad, advance);
  return STRIKE_KINDS.flatMap((kind) =>
    strikesOf(profile, advance, byKind[kind]).map((strike) => ({ ...strike, kind })),
  );
}

/** The lit parts of one advance cut where square ends, and gathered by kind. */
function splitByKind(profile: BiteProfile, squareStrikeRad: number, advance: number) {
  const { square, onTooth, onTop } = profile.teeth(squareStrikeRad);
  const { xAt } = approachLight(profile, advance);
  const byKind: Record<StrikeKind, LitDepths[]> = { square: [], skidding: [], off: [] };
  const add = (kind: StrikeKind, part: Lit) => {
    if (part.to > part.from) byKind[kind].push(litDepths(profile, part));
  };
  for (const { part } of litAt(profile, advance)) {
    const { index, from, to } = part;
    const at = index % profile.pieces.length;
    const own = onTooth[at] ? atRound(square, at) : null;
    if (own === null) {
      add(onTooth[at] || onTop[at] ? "skidding" : "off", part);
      continue;
    }
    const [start, end] = [own.from, own.to].map((s) => Math.min(to, Math.max(from, s)));
    if (start === undefined || end === undefined) continue;
    const xOf = (s: number) => (s === from ? part.xFrom : s === to ? part.xTo : xAt(index, s));
    const cut = (s: number, t: number): Lit => ({ index, from: s, to: t, xFrom: xOf(s), xTo: xOf(t) });
    add("skidding", cut(from, start));
    add("square", cut(start, end));
    add("skidding", cut(end, to));
  }
  return byKind;
}
