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
  const reachWithin: ReachWithin = (parts, depthMm) => {
    let sum = 0;
    for (const { part, depths } of parts) {
      const [reachesFrom, reachesTo] = [depths[0] <= depthMm, depths[1] <= depthMm];
      if (reachesFrom && reachesTo) sum += part.xTo - part.xFrom;
      else if (reachesFrom || reachesTo) sum += shallowReach(profile, advance, part, reachesFrom, depthMm);
    }
    return sum;
  };
  const whole = reachWithin(lit, Number.POSITIVE_INFINITY);
  return {
    shareWithin: (depthMm) => reachWithin(lit, depthMm) / whole,
    depthAtShare: (share) => depthWithReach(lit, share * whole, reachWithin),
  };
}

/** The reach of what of some parts goes no deeper. */
type ReachWithin = (parts: readonly LitDepths[], depthMm: number) => number;

/** What is still in question: depths between two bounds, the parts that are about, and the reach of what is shallower. */
interface Bracket {
  readonly shallow: number;
  readonly deep: number;
  readonly parts: readonly LitDepths[];
  readonly before: number;
}

const JUST_SHORT = 1e-12;

/**
 * The least depth within which there is a reach. The bracket is narrowed at the ends of parts, as in a quick select,
 * so that each part is looked at a few times; where no end lies within, the reach grows evenly.
 */
function depthWithReach(lit: readonly LitDepths[], wanted: number, reachWithin: ReachWithin): number {
  const deepest = lit.reduce((most, { depths }) => Math.max(most, depths[0], depths[1]), 0);
  let bracket: Bracket = { shallow: -1, deep: deepest, parts: lit, before: 0 };
  for (let end = endWithin(bracket); end !== null; end = endWithin(bracket)) {
    const { before, parts } = bracket;
    bracket = narrowed(bracket, end, before + reachWithin(parts, end) >= wanted);
  }
  const { shallow, deep, parts, before } = bracket;
  if (shallow < 0) return deep;
  // Level parts at `deep` are a step there, not a growth before it.
  const growing = parts.filter(({ depths }) => depths[0] !== depths[1]);
  const rest = (depth: number) => before + reachWithin(growing, depth) - wanted;
  return rest(deep - (deep - shallow) * JUST_SHORT) < 0 ? deep : rootBetween(rest, shallow, deep);
}

/** An end of a part strictly within the bracket, of one in the middle of the list if there is any. */
function endWithin({ shallow, deep, parts }: Bracket): number | null {
  for (let i = 0; i < parts.length; i++) {
    const { depths } = atRound(parts, i + (parts.length >> 1));
    if (depths[0] > shallow && depths[0] < deep) return depths[0];
    if (depths[1] > shallow && depths[1] < deep) return depths[1];
  }
  return null;
}

function narrowed({ shallow, deep, parts, before }: Bracket, end: number, enough: boolean): Bracket {
  if (enough) {
    return {
      shallow,
      deep: end,
      parts: parts.filter(({ depths }) => Math.min(depths[0], depths[1]) < end),
      before,
    };
  }
  const left: LitDepths[] = [];
  let passed = before;
  for (const one of parts) {
    if (Math.max(one.depths[0], one.depths[1]) > end) left.push(one);
    else passed += one.part.xTo - one.part.xFrom;
  }
  return { shallow: end, deep, parts: left, before: passed };
}
