import type { Point } from "../language/design.ts";
import { type BiteCondition, closingMPerS } from "./approach.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { firstOffTooth, firstUnclean, type Limit } from "./first-other.ts";
import { pointOn } from "./given.ts";
import type { Place } from "./offered.ts";
import { strikeAngleAt } from "./piece.ts";

/** What is struck first from a closing speed on that should not be. */
export interface OtherStrike {
  /** Null where the target passes the axis and meets nothing. */
  readonly place: Place | null;
  readonly point: Point | null;
  /** On the side of the point that is struck. */
  readonly strikeAngleRad: number;
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
  return speedLimit(profile, spinning, firstUnclean(profile, profile.teeth(spinning.squareStrikeRad)));
}

/**
 * The lowest closing speed at which a share of the phases strikes something that is not a tooth; a tooth's flat or
 * rounded top is of the tooth, though it skids.
 */
export function teethOnly(profile: BiteProfile, spinning: Spinning): SpeedLimit {
  return speedLimit(profile, spinning, firstOffTooth(profile, profile.teeth(spinning.squareStrikeRad)));
}

function speedLimit(profile: BiteProfile, { radPerS }: Spinning, limit: Limit | null): SpeedLimit {
  if (limit === null) return { closingMPerS: null, endedBy: null };
  const { piece, at } = limit;
  const advance = limit.advance <= NEVER_RADII * profile.rimMm ? 0 : limit.advance;
  return {
    closingMPerS: closingMPerS(advance, radPerS),
    endedBy: {
      place: piece.touch.place,
      point: pointOn(profile, piece, at),
      strikeAngleRad: strikeAngleAt(piece, at),
    },
  };
}
