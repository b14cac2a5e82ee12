import type { Point } from "../language/design.ts";
import { type BiteCondition, closingMPerS } from "./approach.ts";
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { alongAt } from "./curve.ts";
import { firstOffTooth, firstUnclean, type Limit } from "./first-other.ts";
import { pointOn } from "./given.ts";
import type { Place } from "./offered.ts";
import { type Piece, strikeAngleAt } from "./piece.ts";
import type { Teeth } from "./teeth.ts";

/**
 * The face or climb of a tooth, its top, its back down to where the outline first rises again, nothing at all, or what
 * else there is: a tail, a counterweight, the waist.
 */
export type BarPart = "face" | "top" | "back" | "rest" | "nothing";

/** What is struck first from a closing speed on that should not be. */
export interface OtherStrike {
  /** Null where the target passes the axis and meets nothing. */
  readonly place: Place | null;
  readonly point: Point | null;
  /** On the side of the point that is struck. */
  readonly strikeAngleRad: number;
  readonly part: BarPart;
  /** How far it lies behind the tip that hid it so far, in turn of the bar, and how much nearer to the axis. */
  readonly behindRad: number;
  readonly belowMm: number;
}

/** Up to which closing speed every strike is what it should be. */
export interface SpeedLimit {
  /**
   * 0 where some phase strikes otherwise at any speed; null where none does up to a thousand times the tip
   * speed.
   */
  readonly closingMPerS: number | null;
  readonly endedBy: OtherStrike | null;
}

/**
 * As it should be only below this many largest radii a radian is not at all: rounding of a rounded or flat tip.
 */
const NEVER_RADII = 1e-9;

type Spinning = Omit<BiteCondition, "closingMPerS">;

/**
 * The lowest closing speed at which a share of the phases strikes something that is not square, or not on the
 * face of a tooth.
 */
export function cleanBite(profile: BiteProfile, spinning: Spinning): SpeedLimit {
  const teeth = profile.teeth(spinning.squareStrikeRad);
  return speedLimit(profile, spinning, teeth, firstUnclean(profile, teeth));
}

/**
 * The lowest closing speed at which a share of the phases strikes something that is not a tooth; a tooth's flat or
 * rounded top is of the tooth, though it skids.
 */
export function teethOnly(profile: BiteProfile, spinning: Spinning): SpeedLimit {
  const teeth = profile.teeth(spinning.squareStrikeRad);
  return speedLimit(profile, spinning, teeth, firstOffTooth(profile, teeth));
}

function speedLimit(
  profile: BiteProfile,
  { radPerS }: Spinning,
  teeth: Teeth,
  limit: Limit | null,
): SpeedLimit {
  if (limit === null) return { closingMPerS: null, endedBy: null };
  const { piece, at } = limit;
  const along = alongAt(piece.curve, at);
  const advance = limit.advance <= NEVER_RADII * profile.rimMm ? 0 : limit.advance;
  return {
    closingMPerS: closingMPerS(advance, radPerS),
    endedBy: {
      place: piece.touch.place,
      point: pointOn(profile, piece, at),
      strikeAngleRad: strikeAngleAt(piece, at),
      part: partOf(profile, teeth, piece),
      behindRad: limit.advance > 0 ? (profile.rimMm - along) / limit.advance : 0,
      belowMm: profile.rimMm - along,
    },
  };
}

function partOf({ pieces }: BiteProfile, teeth: Teeth, piece: Piece): BarPart {
  const index = pieces.indexOf(piece);
  if (piece.touch.place === null) return "nothing";
  if (teeth.onTooth[index]) return "face";
  if (teeth.onTop[index]) return "top";
  for (let back = index; back > index - pieces.length; back--) {
    const here = atRound(pieces, back);
    if (here.alongTo > here.alongFrom) {
      return teeth.tips.includes((back + pieces.length) % pieces.length) ? "back" : "rest";
    }
  }
  return "rest";
}
