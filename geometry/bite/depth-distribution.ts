/** How deep the strikes go, over all starting phases: exact, from the lit parts. */
import type { BiteProfile } from "./bite-profile.ts";
import type { Lit } from "./light.ts";
import { shallowReach } from "./reach.ts";
import { rootBetween } from "./root.ts";

/** A lit part with the depths at its ends. */
export interface LitDepths {
  readonly part: Lit;
  readonly depths: readonly [number, number];
}

/** The distribution of the depth of bite at one advance. */
export interface DepthDistribution {
  /** The share of strikes that go no deeper. */
  shareWithin(depthMm: number): number;
  /** The least depth that a share of the strikes, 0 to 1, does not exceed. */
  depthAtShare(share: number): number;
}

/** The distribution over the lit parts of one advance. They are not empty. */
export function depthDistribution(
  profile: BiteProfile,
  advance: number,
  lit: readonly LitDepths[],
): DepthDistribution {
  const reach = lit.reduce((sum, { part }) => sum + part.xTo - part.xFrom, 0);
  const shareWithin = (depthMm: number) =>
    lit.reduce((sum, { part, depths }) => sum + shallowReach(profile, advance, part, depths, depthMm), 0) /
    reach;
  let ends: number[] | null = null;
  const depthAtShare = (share: number) => {
    ends ??= [...new Set(lit.flatMap(({ depths }) => depths))].sort((a, b) => a - b);
    return quantile(shareWithin, ends, share);
  };
  return { shareWithin, depthAtShare };
}

const JUST_SHORT = 1e-12;

/** Between neighbouring ends the share is continuous; at an end it may jump, where the bar is level. */
function quantile(shareWithin: (depth: number) => number, ends: readonly number[], share: number): number {
  let [low, high] = [-1, ends.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (shareWithin(ends[middle] ?? 0) >= share) high = middle;
    else low = middle;
  }
  const deep = ends[high] ?? 0;
  const shallow = ends[low];
  if (shallow === undefined) return deep;
  const rest = (depth: number) => shareWithin(depth) - share;
  // Just short of a level part at `deep`, the share is what it is without that part.
  return rest(deep - (deep - shallow) * JUST_SHORT) < 0 ? deep : rootBetween(rest, shallow, deep);
}
