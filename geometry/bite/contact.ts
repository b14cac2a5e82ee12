import type { Point } from "../language/design.ts";
import { approachLight } from "./approach-light.ts";
import { atRound } from "./at-round.ts";
import type { BiteProfile } from "./bite-profile.ts";
import { alongAt } from "./curve.ts";
import { pointOn } from "./given.ts";
import { litBy } from "./light.ts";
import type { Place } from "./offered.ts";
import { pieceTurnAt, strikeAngleAt } from "./piece.ts";

/** How one approach ends. */
export interface Contact {
  /** How far the target has come since it could first be met. */
  readonly depthMm: number;
  /** How far it still had to go until abreast of the axis; `depthMm` short of the profile's rim. */
  readonly alongMm: number;
  /** How far the bar has turned from how it is drawn, in the sense of its spin. */
  readonly barTurnRad: number;
  /** The point of the bar, as drawn, and what it belongs to; null where the target passed and met nothing. */
  readonly point: Point | null;
  readonly place: Place | null;
  readonly strikeAngleRad: number | null;
}

/**
 * The first contact of one approach.
 * @param advanceMm how far the target comes while the bar turns a radian, above 0
 * @param entryTurnRad how far the bar has turned from how it is drawn, in the sense of its spin, when the target is at
 *   the rim
 */
export function contactAt(profile: BiteProfile, advanceMm: number, entryTurnRad: number): Contact {
  const light = approachLight(profile, advanceMm);
  const lit = litBy(light);
  const { startTurnRad, rimMm, pieces } = profile;
  const period = 2 * Math.PI * advanceMm;
  const start = lit[0]?.xFrom ?? 0;
  const way = (rimMm + advanceMm * (entryTurnRad - startTurnRad) - start) % period;
  const x = start + (way < 0 ? way + period : way);
  const part = lit.find(({ xTo }) => xTo >= x) ?? lit.at(-1);
  if (part === undefined) throw new RangeError("a profile always meets its target or lets it pass");
  const { index, from, to, xFrom, xTo } = part;
  const s = x <= xFrom ? from : x >= xTo ? to : light.find(index, from, to, x);
  const piece = atRound(pieces, index);
  const alongMm = Math.min(rimMm, alongAt(piece.curve, s));
  return {
    depthMm: rimMm - alongMm,
    alongMm,
    barTurnRad: startTurnRad + pieceTurnAt(piece, s),
    point: pointOn(profile, piece, s),
    place: piece.touch.place,
    strikeAngleRad: piece.touch.place === null ? null : strikeAngleAt(piece, s),
  };
}
