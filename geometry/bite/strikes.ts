import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { radiusAt } from "./curve.ts";
import { fractionAt } from "./given.ts";
import type { Place, Touch } from "./offered.ts";
import { type Piece, strikeAngleAt } from "./piece.ts";
import type { LitDepths } from "./reach.ts";

/** A range of a figure, `least` ≤ `most`. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/** What strikes first at one place of the bar, over all starting phases. */
export interface Strike {
  /** A segment of the loop as given, or the corner after one. */
  readonly place: Place;
  /** Share of all strikes. */
  readonly share: number;
  readonly depthMm: Range;
  readonly radiusMm: Range;
  readonly strikeAngleRad: Range;
  /**
   * The parts of the segment that can strike first, as fractions of the way from its `from` to its `to`; none for a
   * corner.
   */
  readonly parts: readonly Range[];
}

/** The lit parts of one advance gathered by place, in the order of the loop as given. */
export function strikesOf(profile: BiteProfile, advance: number, lit: readonly LitDepths[]): Strike[] {
  const byTouch = new Map<Touch, LitDepths[]>();
  for (const one of lit) {
    const { touch } = atRound(profile.pieces, one.part.index);
    const gathered = byTouch.get(touch);
    if (gathered === undefined) byTouch.set(touch, [one]);
    else gathered.push(one);
  }
  const strikes: Strike[] = [];
  for (const [{ place }, own] of byTouch) {
    if (place !== null) strikes.push(strikeOf(profile, advance, place, own));
  }
  return strikes.sort((a, b) => order(a.place) - order(b.place));
}

/** A corner comes after the segment that ends in it. */
function order({ kind, index }: Place): number {
  return kind === "corner" ? index + 0.5 : index;
}

function strikeOf(profile: BiteProfile, advance: number, place: Place, lit: readonly LitDepths[]): Strike {
  const [depth, radius, angle] = [new Span(), new Span(), new Span()];
  const parts: Range[] = [];
  let reach = 0;
  for (const { part, depthFrom, depthTo } of lit) {
    const piece = atRound(profile.pieces, part.index);
    reach += part.xTo - part.xFrom;
    depth.add(depthFrom).add(depthTo);
    // Along a lit part the angle and the radius each run one way.
    for (const s of [part.from, part.to]) {
      angle.add(strikeAngleAt(piece, s));
      radius.add(Math.min(profile.maxRadiusMm, radiusAt(piece.touch.curve, s)));
    }
    if (place.kind === "segment") parts.push(partOf(piece, part.from, part.to));
  }
  return {
    place,
    share: reach / (2 * Math.PI * advance),
    depthMm: depth.range(),
    radiusMm: radius.range(),
    strikeAngleRad: angle.range(),
    parts: joined(parts),
  };
}

function partOf(piece: Piece, from: number, to: number): Range {
  const [a, b] = [fractionAt(piece, from), fractionAt(piece, to)];
  return { least: Math.min(a, b), most: Math.max(a, b) };
}

/** Fractions nearer than this are one place: rounding of where two pieces of a segment meet. */
const SAME_FRACTION = 1e-12;

/** Ranges in order, those that touch made one. */
function joined(ranges: Range[]): readonly Range[] {
  if (ranges.length < 2) return ranges;
  const result: Range[] = [];
  for (const range of ranges.sort((a, b) => a.least - b.least)) {
    const last = result.at(-1);
    if (last === undefined || range.least > last.most + SAME_FRACTION) result.push(range);
    else result[result.length - 1] = { least: last.least, most: Math.max(last.most, range.most) };
  }
  return result;
}

/** The range of what has been added. */
class Span {
  private least = Number.POSITIVE_INFINITY;
  private most = Number.NEGATIVE_INFINITY;

  add(value: number): this {
    if (value < this.least) this.least = value;
    if (value > this.most) this.most = value;
    return this;
  }

  range(): Range {
    return { least: this.least, most: this.most };
  }
}
