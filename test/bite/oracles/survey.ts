/**
 * The figures of the bite over all starting phases, from phases that were followed one by one. Phases are
 * evenly spread at first; between two of them the middle is followed as well, and halving goes on as long as
 * what is struck there does not lie between what is struck on both sides.
 *
 * How far off it can be. Among N even phases alone, each of J places where the strike jumps is known to half a
 * spacing: a share is off by up to J/(2N), a mean by up to ΣΔ/(2N), Δ the jumps of depth. H halvings bring both
 * down by 2^H, for the jumps that show: two that lie within half a spacing of each other, between samples that
 * look alike, stay unseen, and shares may then be off by 1/(2N) for each such pair.
 */
import type { Contact, Stepper } from "./first-contact.ts";

export interface Survey {
  readonly maxMm: number;
  readonly minMm: number;
  readonly meanMm: number;
  readonly passedShare: number;
  readonly squareShare: number;
  /** What is struck, by name: `segment 3`, away from its ends, or `corner 3`, where segment 3 ends. */
  readonly struck: ReadonlyMap<string, Struck>;
  /** The depth that a share of the phases stays under. */
  quantileMm(share: number): number;
  /** How many phases were followed. */
  readonly followed: number;
}

export interface Struck {
  /** Share of all phases. */
  share: number;
  /** Of every strike that was followed. */
  readonly depthsMm: number[];
  readonly strikeAnglesRad: number[];
}

export interface SurveyEffort {
  readonly phases: number;
  readonly halvings: number;
  /** Depths that lie this near to halfway between their neighbours need no more halving. */
  readonly smoothMm: number;
}

export interface SurveyedBar {
  readonly segments: number;
  readonly squareStrikeRad: number;
}

/** A starting phase as a share of a turn, and how it ended. */
interface Sample {
  readonly phase: number;
  readonly depthMm: number;
  readonly place: string;
  readonly strikeAngleRad: number;
  readonly square: boolean;
}

/** Depths from one to another, evenly, for a share of the phases. */
interface Ramp {
  readonly share: number;
  readonly fromMm: number;
  readonly toMm: number;
}

const FULL_TURN = 2 * Math.PI;
/** A strike this near to an end of its segment, as a share of it, strikes the corner: rounding only. */
const CORNER = 1e-9;
const PASSED = "passed";

export function survey(step: Stepper, bar: SurveyedBar, effort: SurveyEffort): Survey {
  const struck = new Map<string, Struck>();
  const ramps: Ramp[] = [];
  let [squareShare, meanMm, followed] = [0, 0, 0];
  const follow = (phase: number): Sample => {
    followed++;
    return sampled(step(FULL_TURN * phase), phase, bar);
  };
  const count = (a: Sample, b: Sample) => {
    const share = b.phase - a.phase;
    ramps.push({ share, fromMm: a.depthMm, toMm: b.depthMm });
    meanMm += (share * (a.depthMm + b.depthMm)) / 2;
    for (const { place, square, depthMm, strikeAngleRad } of [a, b]) {
      const own = struck.get(place) ?? { share: 0, depthsMm: [], strikeAnglesRad: [] };
      own.share += share / 2;
      own.depthsMm.push(depthMm);
      own.strikeAnglesRad.push(strikeAngleRad);
      struck.set(place, own);
      if (square) squareShare += share / 2;
    }
  };
  const between = (a: Sample, b: Sample, halvings: number): void => {
    const middle = follow((a.phase + b.phase) / 2);
    if (halvings > 0 && !isSmooth(a, middle, b, effort.smoothMm)) {
      between(a, middle, halvings - 1);
      between(middle, b, halvings - 1);
      return;
    }
    count(a, middle);
    count(middle, b);
  };
  const first = follow(0);
  let before = first;
  for (let i = 1; i <= effort.phases; i++) {
    const here = i < effort.phases ? follow(i / effort.phases) : { ...first, phase: 1 };
    between(before, here, effort.halvings);
    before = here;
  }
  ramps.sort((a, b) => Math.min(a.fromMm, a.toMm) - Math.min(b.fromMm, b.toMm));
  const depths = ramps.flatMap(({ fromMm, toMm }) => [fromMm, toMm]);
  const passedShare = struck.get(PASSED)?.share ?? 0;
  struck.delete(PASSED);
  return {
    maxMm: Math.max(...depths),
    minMm: Math.min(...depths),
    meanMm,
    squareShare,
    passedShare,
    struck,
    quantileMm: (share) => quantile(ramps, share),
    followed,
  };
}

function sampled({ depthMm, hit }: Contact, phase: number, bar: SurveyedBar): Sample {
  if (hit === null) return { phase, depthMm, place: PASSED, strikeAngleRad: 0, square: false };
  const { segment, fraction, strikeAngleRad } = hit;
  return {
    phase,
    depthMm,
    place: placeOf(segment, fraction, bar.segments),
    strikeAngleRad,
    square: strikeAngleRad <= bar.squareStrikeRad,
  };
}

function placeOf(segment: number, fraction: number, segments: number): string {
  if (fraction < CORNER) return `corner ${(segment + segments - 1) % segments}`;
  return fraction > 1 - CORNER ? `corner ${segment}` : `segment ${segment}`;
}

function isSmooth(a: Sample, middle: Sample, b: Sample, smoothMm: number): boolean {
  const alike = (other: Sample) => other.place === middle.place && other.square === middle.square;
  return alike(a) && alike(b) && Math.abs((a.depthMm + b.depthMm) / 2 - middle.depthMm) <= smoothMm;
}

/** The depth under which a share of the phases stays, halved out of the ramps. */
function quantile(ramps: readonly Ramp[], share: number): number {
  const under = (depth: number) =>
    ramps.reduce((sum, { share: own, fromMm, toMm }) => {
      const [low, high] = [Math.min(fromMm, toMm), Math.max(fromMm, toMm)];
      if (depth >= high) return sum + own;
      return depth <= low ? sum : sum + (own * (depth - low)) / (high - low);
    }, 0);
  let [low, high] = [0, Math.max(...ramps.flatMap(({ fromMm, toMm }) => [fromMm, toMm]))];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (under(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
