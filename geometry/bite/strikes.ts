import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { fractionAt, segmentOf } from "./given.ts";
import type { Lit } from "./light.ts";
import { strikeAngleAt } from "./piece.ts";
import { depthsAt } from "./reach.ts";

/** A range of a figure, `least` ≤ `most`. */
interface Range {
  readonly least: number;
  readonly most: number;
}

/** What strikes first on one segment, over all starting phases. */
export interface Strike {
  /** The segment's place in the loop as given. */
  readonly segment: number;
  /** Share of all strikes. */
  readonly share: number;
  readonly depthMm: Range;
  readonly radiusMm: Range;
  readonly strikeAngleRad: Range;
  /** The parts of the segment that can strike first, as fractions of the way from its `from` to its `to`. */
  readonly parts: readonly Range[];
}

/** The lit parts of one advance gathered by segment, in the order of the loop as given. */
export function strikesOf(profile: BiteProfile, advance: number, lit: readonly Lit[]): Strike[] {
  const bySegment = new Map<number, Lit[]>();
  for (const part of lit) {
    const segment = segmentOf(profile, atRound(profile.pieces, part.index));
    const gathered = bySegment.get(segment);
    if (gathered === undefined) bySegment.set(segment, [part]);
    else gathered.push(part);
  }
  return [...bySegment]
    .sort(([a], [b]) => a - b)
    .map(([segment, own]) => strikeOf(profile, advance, segment, own));
}

function strikeOf(profile: BiteProfile, advance: number, segment: number, lit: readonly Lit[]): Strike {
  const reach = lit.reduce((sum, { xFrom, xTo }) => sum + (xTo - xFrom), 0);
  const depthMm = rangeOf(lit.flatMap((part) => depthsAt(profile, part)));
  const rim = profile.maxRadiusMm;
  const pieceOf = ({ index }: Lit) => atRound(profile.pieces, index);
  const ends = lit.map((part) => ({ piece: pieceOf(part), at: [part.from, part.to] }));
  return {
    segment,
    share: reach / (2 * Math.PI * advance),
    depthMm,
    radiusMm: { least: rim - depthMm.most, most: rim - depthMm.least },
    // Along a lit part the angle runs one way.
    strikeAngleRad: rangeOf(ends.flatMap(({ piece, at }) => at.map((s) => strikeAngleAt(piece, s)))),
    parts: joined(ends.map(({ piece, at }) => rangeOf(at.map((s) => fractionAt(profile, piece, s))))),
  };
}

/** Fractions nearer than this are one place: rounding of where two pieces of a segment meet. */
const SAME_FRACTION = 1e-12;

/** Ranges in order, those that touch made one. */
function joined(ranges: readonly Range[]): Range[] {
  const result: Range[] = [];
  for (const range of [...ranges].sort((a, b) => a.least - b.least)) {
    const last = result.at(-1);
    if (last === undefined || range.least > last.most + SAME_FRACTION) result.push(range);
    else result[result.length - 1] = { least: last.least, most: Math.max(last.most, range.most) };
  }
  return result;
}

function rangeOf(values: readonly number[]): Range {
  return { least: Math.min(...values), most: Math.max(...values) };
}
