/**
 * The questions turned round: which closing speed, or which spin, gives a wanted depth. Both ask for an advance, since
 * nothing else about the speeds matters.
 */
import { closingMPerS } from "./approach.ts";
import { maxDepthMm } from "./bite-at.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { rootBetween } from "./root.ts";

/** An advance of this many rims a radian, ten times the tip speed, is the most that is tried. */
const MOST_SHARE = 10;
/** From one advance of the ladder to the next. */
const STEP = 1.08;

/**
 * The lowest advance, in mm per radian, at which the deepest bite is as deep as wanted. It is looked for on a ladder of
 * advances, since the depth can jump where something comes out of the shade: there, the step at which it does. The
 * ladder begins below any: no bite is deeper than the way from a tip to where the outline reaches back farthest.
 * Null if none up to ten times the tip speed is enough.
 */
export function advanceForDepth(profile: BiteProfile, depthMm: number): number | null {
  const short = (advance: number) => maxDepthMm(profile, advance) - depthMm;
  let last = depthMm / profile.pieces.reduce((most, { turnTo }) => Math.max(most, turnTo), 2 * Math.PI);
  if (short(last) >= -1e-12 * depthMm) return last;
  while (last < MOST_SHARE * profile.rimMm) {
    const next = last * STEP;
    if (short(next) >= 0) return enough(short, rootBetween(short, last, next), next);
    last = next;
  }
  return null;
}

/** The root itself may be short by rounding, or stand just before a jump. */
function enough(short: (advance: number) => number, root: number, above: number): number {
  const slack = 1e-12 * above;
  return short(root) >= -slack ? root : root + slack;
}

/** The lowest closing speed at which the deepest bite at a spin is as deep as wanted. */
export function closingForDepth(profile: BiteProfile, depthMm: number, radPerS: number): number | null {
  const advance = advanceForDepth(profile, depthMm);
  return advance === null ? null : closingMPerS(advance, radPerS);
}

/** The highest spin, in rad/s, at which the deepest bite at a closing speed is as deep as wanted. */
export function spinForDepth(profile: BiteProfile, depthMm: number, closing: number): number | null {
  const advance = advanceForDepth(profile, depthMm);
  return advance === null ? null : (closing * 1000) / advance;
}
