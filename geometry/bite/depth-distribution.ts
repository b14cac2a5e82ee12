/** How deep the strikes go, over all starting phases: exact, from the lit parts. */
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { type LitDepths, shallowReach } from "./reach.ts";
import { rootBetween } from "./root.ts";

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
  const parts = partsOf(profile, advance, lit);
  let whole = 0;
  for (const reach of parts.reach) whole += reach;
  const all = Int32Array.from(lit.keys());
  return {
    shareWithin: (depthMm) => reachWithin(parts, all, all.length, depthMm) / whole,
    depthAtShare: (share) => depthWithReach(parts, all.slice(), share * whole),
  };
}

/**
 * The lit parts in columns, since every closing speed of a curve asks for three quantiles of up to thousands of parts:
 * how shallow and how deep each goes, and its reach.
 */
interface Parts {
  readonly least: Float64Array;
  readonly most: Float64Array;
  readonly reach: Float64Array;
  /** The reach of what of a part goes no deeper than a depth between its least and its most. */
  within(part: number, depthMm: number): number;
}

function partsOf(profile: BiteProfile, advance: number, lit: readonly LitDepths[]): Parts {
  const [least, most, reach] = [0, 0, 0].map(() => new Float64Array(lit.length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (const [i, { part, depthFrom, depthTo }] of lit.entries()) {
    least[i] = Math.min(depthFrom, depthTo);
    most[i] = Math.max(depthFrom, depthTo);
    reach[i] = part.xTo - part.xFrom;
  }
  const within = (i: number, depthMm: number) => {
    const { part, depthFrom, depthTo } = atRound(lit, i);
    return shallowReach(profile, advance, part, depthFrom < depthTo, depthMm);
  };
  return { least, most, reach, within };
}

/** The reach of what of the first `count` parts of a list goes no deeper. */
function reachWithin(parts: Parts, list: Int32Array, count: number, depthMm: number): number {
  const { least, most, reach } = parts;
  let sum = 0;
  for (let at = 0; at < count; at++) {
    const i = list[at] ?? 0;
    if ((most[i] ?? 0) <= depthMm) sum += reach[i] ?? 0;
    else if ((least[i] ?? 0) <= depthMm) sum += parts.within(i, depthMm);
  }
  return sum;
}

const JUST_SHORT = 1e-12;

/**
 * The least depth within which there is a reach. Two bounds are narrowed at the ends of parts, as in a quick select: the
 * list is cut down to what is still about, so each part is looked at a few times. Where no end lies between the
 * bounds, the reach grows evenly.
 */
function depthWithReach(parts: Parts, list: Int32Array, wanted: number): number {
  const { least, most, reach } = parts;
  let [count, before, shallow] = [list.length, 0, -1];
  let deep = most.reduce((a, b) => Math.max(a, b), 0);
  for (;;) {
    const end = endWithin(parts, list, count, shallow, deep);
    if (end === null) break;
    const isEnough = before + reachWithin(parts, list, count, end) >= wanted;
    let left = 0;
    for (let at = 0; at < count; at++) {
      const i = list[at] ?? 0;
      if (isEnough ? (least[i] ?? 0) < end : (most[i] ?? 0) > end) list[left++] = i;
      else if (!isEnough) before += reach[i] ?? 0;
    }
    count = left;
    if (isEnough) deep = end;
    else shallow = end;
  }
  if (shallow < 0) return deep;
  const rest = (depthMm: number) => before + reachWithin(parts, list, count, depthMm) - wanted;
  // Just short of a level part at `deep`, which is a step there, the reach is what it is without it.
  const last = deep - (deep - shallow) * JUST_SHORT;
  return rest(last) < 0 ? deep : rootBetween(rest, shallow, last);
}

/** An end of a part strictly between two depths, of one in the middle of the list if there is any. */
function endWithin(
  { least, most }: Parts,
  list: Int32Array,
  count: number,
  shallow: number,
  deep: number,
): number | null {
  for (let step = 0; step < count; step++) {
    const at = step + (count >> 1);
    const i = list[at < count ? at : at - count] ?? 0;
    const [a, b] = [least[i] ?? 0, most[i] ?? 0];
    if (a > shallow && a < deep) return a;
    if (b > shallow && b < deep) return b;
  }
  return null;
}
