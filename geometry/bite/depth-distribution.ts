/** How deep the strikes go, over all starting phases: exact, from the lit parts. */
import { atRound } from "./at-round.ts";
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
  const reachWithin = (parts: readonly LitDepths[], depthMm: number): number => {
    let sum = 0;
    for (const { part, depths } of parts) sum += shallowReach(profile, advance, part, depths, depthMm);
    return sum;
  };
  const whole = reachWithin(lit, Number.POSITIVE_INFINITY);
  let ends: readonly End[] | null = null;
  const depthAtShare = (share: number) => {
    ends ??= endsOf(lit);
    return quantile(ends, lit, share * whole, reachWithin);
  };
  return { shareWithin: (depthMm) => reachWithin(lit, depthMm) / whole, depthAtShare };
}

/** A depth at which a lit part ends. */
interface End {
  readonly depthMm: number;
  /** The reach of what goes no deeper; NaN until it is asked for. */
  reach: number;
}

function endsOf(lit: readonly LitDepths[]): End[] {
  const depths = new Set<number>();
  for (const { depths: own } of lit) depths.add(own[0]).add(own[1]);
  return [...depths].sort((a, b) => a - b).map((depthMm) => ({ depthMm, reach: Number.NaN }));
}

const JUST_SHORT = 1e-12;

/**
 * Between neighbouring ends the reach grows evenly, and only by the parts that span both; at an end it may jump, where
 * the bar is level.
 */
function quantile(
  ends: readonly End[],
  lit: readonly LitDepths[],
  wanted: number,
  reachWithin: (parts: readonly LitDepths[], depthMm: number) => number,
): number {
  let [low, high] = [-1, ends.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    const end = atRound(ends, middle);
    if (Number.isNaN(end.reach)) end.reach = reachWithin(lit, end.depthMm);
    if (end.reach >= wanted) high = middle;
    else low = middle;
  }
  const deep = atRound(ends, high).depthMm;
  if (low < 0) return deep;
  const { depthMm: shallow, reach: base } = atRound(ends, low);
  const spanning = lit.filter(
    ({ depths: [a, b] }) => Math.min(a, b) <= shallow && Math.max(a, b) >= deep && a !== b,
  );
  const before = reachWithin(spanning, shallow);
  const rest = (depth: number) => base - before + reachWithin(spanning, depth) - wanted;
  // Just short of a level part at `deep`, the reach is what it is without that part.
  return rest(deep - (deep - shallow) * JUST_SHORT) < 0 ? deep : rootBetween(rest, shallow, deep);
}
