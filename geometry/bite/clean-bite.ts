import type { Point } from "../language/design.ts";
import { type BiteCondition, closingMPerS } from "./approach.ts";
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { pointOn, segmentOf } from "./given.ts";
import { type Lit, litBy } from "./light.ts";
import { type Piece, strikeAngleAt } from "./piece.ts";
import { type SquarePart, type Teeth, teethOf } from "./teeth.ts";
import { type TipLight, tipLight } from "./tip-light.ts";

/** What ends the clean bite: where the first strike lands that is not square on the face of a tooth. */
interface CleanBiteEnd {
  /** The segment's place in the loop as given. */
  readonly segment: number;
  readonly point: Point;
  /** On the side of the point that strikes uncleanly. */
  readonly strikeAngleRad: number;
}

/** Up to which closing speed every strike is square and on the face of a tooth. */
export interface CleanBite {
  /**
   * 0 where some phase strikes uncleanly at any speed; null where none does up to a thousand times the tip
   * speed.
   */
  readonly closingMPerS: number | null;
  readonly endedBy: CleanBiteEnd | null;
}

/**
 * Clean beyond this many largest radii a radian, which is this many times the tip speed, is clean at every
 * speed.
 */
const STEEPEST_RADII = 1000;
/**
 * Clean only below this many largest radii a radian is not clean at all: rounding of a rounded or flat tip.
 */
const NOT_CLEAN_RADII = 1e-9;
/**
 * A place this short against the largest radius strikes with no share worth the name: rounding of where
 * shadows end.
 */
const NO_SHARE_RADII = 1e-12;

/** Where uncleanness begins. */
interface Limit {
  readonly advance: number;
  readonly piece: Piece;
  readonly at: number;
}

/**
 * The lowest closing speed at which a share of the phases strikes something that is not square, or not on the
 * face of a tooth. Exact, and without a search over speeds: README.md, "Clean bite".
 */
export function cleanBite(
  profile: BiteProfile,
  { radPerS, squareStrikeRad }: Omit<BiteCondition, "closingMPerS">,
): CleanBite {
  const limit = firstUnclean(profile, teethOf(profile, squareStrikeRad));
  if (limit === null) return { closingMPerS: null, endedBy: null };
  const { piece, at } = limit;
  const advance = limit.advance <= NOT_CLEAN_RADII * profile.maxRadiusMm ? 0 : limit.advance;
  return {
    closingMPerS: closingMPerS(advance, radPerS),
    endedBy: {
      segment: segmentOf(profile, piece),
      point: pointOn(profile, piece, at),
      strikeAngleRad: strikeAngleAt(piece, at),
    },
  };
}

function firstUnclean(profile: BiteProfile, teeth: Teeth): Limit | null {
  const { tips } = teeth;
  const start = atRound(profile.pieces, 0);
  if (tips.length === 0) return { advance: 0, piece: start, at: start.from };
  const limits = tips.map((tip, i) => {
    const next = atRound(tips, i + 1);
    const count = next > tip ? next - tip : next - tip + profile.pieces.length;
    return firstUncleanBehind(profile, teeth, tip, count);
  });
  return limits.reduce(
    (low, limit) => (low === null || (limit && limit.advance < low.advance) ? limit : low),
    null,
  );
}

/**
 * What ends the clean bite between one tip and the next: the unclean place that the lamp at the tip sees
 * highest.
 */
function firstUncleanBehind(profile: BiteProfile, teeth: Teeth, tip: number, count: number): Limit | null {
  const steepest = STEEPEST_RADII * profile.maxRadiusMm;
  const light = tipLight(profile, tip, count, steepest);
  const noShare = NO_SHARE_RADII * profile.maxRadiusMm;
  for (const lit of litBy(light).reverse()) {
    const unclean = uncleanPlace(light, teeth, (tip + 1 + lit.index) % profile.pieces.length, lit, noShare);
    if (unclean !== null) return unclean;
  }
  // The back of the tooth itself: it is struck as soon as the target's path is steeper.
  if (light.start <= -steepest) return null;
  const back = light.pieceAt(0);
  return { advance: light.advanceOf(light.start), piece: back, at: back.from };
}

/**
 * The unclean part of a lit part that is nearest to its end, if it has a share: unclean from its end on
 * backwards.
 */
function uncleanPlace(light: TipLight, teeth: Teeth, index: number, lit: Lit, noShare: number): Limit | null {
  const piece = light.pieceAt(lit.index);
  const [from, to] = lastUnclean(lit, teeth.onTooth[index] ? (teeth.square[index] ?? null) : null);
  const xAt = (s: number) => (s === lit.from ? lit.xFrom : s === lit.to ? lit.xTo : light.xAt(lit.index, s));
  return xAt(to) - xAt(from) <= noShare ? null : { advance: light.advanceOf(xAt(to)), piece, at: to };
}

/** What of a lit part lies outside the clean part of its piece, nearest to its end; empty if nothing does. */
function lastUnclean(lit: Lit, clean: SquarePart | null): [from: number, to: number] {
  if (clean === null || clean.to <= lit.from || clean.from >= lit.to) return [lit.from, lit.to];
  if (clean.to < lit.to) return [clean.to, lit.to];
  return [lit.from, Math.max(lit.from, clean.from)];
}
