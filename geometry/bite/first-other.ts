/**
 * The lowest advance at which a share of the phases strikes something else than it should, without a search over
 * speeds: README.md, "Clean bite" and "Teeth only".
 */
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { alongAt, outwardAt, turningAt } from "./curve.ts";
import { type Lit, litBy } from "./light.ts";
import { type Piece, pieceTurnAt } from "./piece.ts";
import { rootBetween } from "./root.ts";
import type { SquarePart, Teeth } from "./teeth.ts";
import { type Lamp, pieceOfSection, type Section, type TipLight, tipLight } from "./tip-light.ts";

/** Where something else begins to be struck. */
export interface Limit {
  readonly advance: number;
  readonly piece: Piece;
  readonly at: number;
}

/** What should be struck of each piece: null for nothing of it. */
type Wanted = (piece: number) => SquarePart | null;

/**
 * This many largest radii a radian, which is this many times the tip speed, stand for every speed.
 */
const STEEPEST_RADII = 1000;
/**
 * A place this short against the largest radius strikes with no share worth the name: rounding of where
 * shadows end.
 */
const NO_SHARE_RADII = 1e-12;

/** The lowest advance at which a strike is not square on the face of a tooth. Null if there is none. */
export function firstUnclean(profile: BiteProfile, teeth: Teeth): Limit | null {
  const wanted: Wanted = (piece) => (teeth.onTooth[piece] ? (teeth.square[piece] ?? null) : null);
  return lowest(profile, teeth, (section) => limitOf(profile, wanted, section, null));
}

/** The lowest advance at which a strike is not on a tooth, its rounded or flat top included. */
export function firstOffTooth(profile: BiteProfile, teeth: Teeth): Limit | null {
  const wanted: Wanted = (piece) =>
    teeth.onTooth[piece] || teeth.onTop[piece] ? atRound(profile.pieces, piece) : null;
  return lowest(profile, teeth, (section) => limitBehindTop(profile, teeth, wanted, section));
}

/** The least of the limits of the sections from one tip to the next. */
function lowest(
  profile: BiteProfile,
  teeth: Teeth,
  limitIn: (section: Section) => Limit | null,
): Limit | null {
  const { tips } = teeth;
  const start = atRound(profile.pieces, 0);
  if (tips.length === 0) return { advance: 0, piece: start, at: start.from };
  let low: Limit | null = null;
  for (const [i, tip] of tips.entries()) {
    const next = atRound(tips, i + 1);
    const count = next > tip ? next - tip : next - tip + profile.pieces.length;
    const limit = limitIn({ first: tip + 1, count });
    if (limit !== null && (low === null || limit.advance < low.advance)) low = limit;
  }
  return low;
}

/** The unwanted place that a lamp sees highest. */
function limitOf(profile: BiteProfile, wanted: Wanted, section: Section, lamp: Lamp | null): Limit | null {
  const steepest = STEEPEST_RADII * profile.rimMm;
  const light = tipLight(profile, section, lamp, steepest);
  const noShare = NO_SHARE_RADII * profile.rimMm;
  for (const lit of litBy(light).reverse()) {
    const own = wanted((section.first + lit.index) % profile.pieces.length);
    const unwanted = unwantedPlace(light, own, lit, noShare);
    if (unwanted !== null) return unwanted;
  }
  // The back of the tooth itself: it is struck as soon as the target's path is steeper.
  if (light.start <= -steepest) return null;
  const back = light.pieceAt(0);
  return { advance: light.advanceOf(light.start), piece: back, at: back.from };
}

/**
 * The unwanted part of a lit part that is nearest to its end, if it has a share: unwanted from its end on
 * backwards.
 */
function unwantedPlace(light: TipLight, wanted: SquarePart | null, lit: Lit, noShare: number): Limit | null {
  const piece = light.pieceAt(lit.index);
  const [from, to] = lastUnwanted(lit, wanted);
  const xAt = (s: number) => (s === lit.from ? lit.xFrom : s === lit.to ? lit.xTo : light.xAt(lit.index, s));
  return xAt(to) - xAt(from) <= noShare ? null : { advance: light.advanceOf(xAt(to)), piece, at: to };
}

/** What of a lit part lies outside the wanted part of its piece, nearest to its end; empty if nothing does. */
function lastUnwanted(lit: Lit, wanted: SquarePart | null): [from: number, to: number] {
  if (wanted === null || wanted.to <= lit.from || wanted.from >= lit.to) return [lit.from, lit.to];
  if (wanted.to < lit.to) return [wanted.to, lit.to];
  return [lit.from, Math.max(lit.from, wanted.from)];
}

/**
 * Behind a top that is rounded, the path that just clears it touches it where its slope is the advance: the lamp
 * stands there. So the limit is the advance at which the lamp and the slope under it agree.
 */
function limitBehindTop(profile: BiteProfile, teeth: Teeth, wanted: Wanted, section: Section): Limit | null {
  const top = topOf(profile, teeth, section);
  const rest: Section = { first: section.first + top, count: section.count - top };
  if (rest.count <= 0) return null;
  const end = limitOf(profile, wanted, rest, null);
  if (top === 0) return end;
  // From below something unwanted, the limit is passed.
  const highest = highestUnwanted(profile, wanted, rest);
  const last = atRound(profile.pieces, rest.first - 1);
  if (last.alongTo > highest && (end === null || end.advance >= slopeAt(last, last.to))) return end;
  for (let place = rest.first - 1; place >= section.first; place--) {
    const { piece, lapped } = pieceOfSection(profile, place);
    const limitFrom = (s: number): Limit | null => {
      const lamp = { turn: pieceTurnAt(piece, s) + lapped, along: alongAt(piece.curve, s) };
      return limitOf(profile, wanted, rest, lamp);
    };
    const excess = (s: number) => {
      if (alongAt(piece.curve, s) <= highest) return -1;
      return (limitFrom(s)?.advance ?? Number.POSITIVE_INFINITY) - slopeAt(piece, s);
    };
    if (excess(piece.from) >= 0) return limitFrom(rootBetween(excess, piece.from, piece.to));
  }
  return end;
}

/** How steeply the path falls. */
function slopeAt({ curve }: Piece, s: number): number {
  return -outwardAt(curve, s) / turningAt(curve, s);
}

function highestUnwanted({ pieces }: BiteProfile, wanted: Wanted, { first, count }: Section): number {
  let highest = 0;
  for (let place = first; place < first + count; place++) {
    const { alongFrom, alongTo } = atRound(pieces, place);
    if (wanted(place % pieces.length) === null) highest = Math.max(highest, alongFrom, alongTo);
  }
  return highest;
}

/** How many pieces at the start of a section belong to the top of its tooth, before it turns back under itself. */
function topOf({ pieces }: BiteProfile, teeth: Teeth, { first, count }: Section): number {
  const goesOn = (place: number) => {
    const { curve, from, to } = atRound(pieces, place);
    return atRound(teeth.onTop, place) && turningAt(curve, (from + to) / 2) > 0;
  };
  let top = 0;
  while (top < count && top < pieces.length && goesOn(first + top)) top++;
  return top;
}
