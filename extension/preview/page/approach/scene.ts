/** One approach as it is drawn: where bar and target stand, up to their first contact. Exact, in mm and radians. */
import {
  advanceMmPerRad,
  type BiteProfile,
  type Contact,
  contactAt,
} from "../../../../geometry/bite/bite.ts";
import type { PlanePoint } from "../../protocol.ts";

const TURN = 2 * Math.PI;

/** A single approach, worked out. */
export interface Approach {
  readonly profile: BiteProfile;
  readonly advanceMm: number;
  readonly contact: Contact;
  /** How far the bar turns from the first picture to the contact. */
  readonly leadRad: number;
}

/** What stands where, a little before contact or at it. The target comes from the right. */
export interface Scene {
  /** How far the bar is turned from how it is drawn, counter-clockwise. */
  readonly barTurnRad: number;
  /** The edge, the middle of the rounded edge, or a point of the face. */
  readonly targetAt: PlanePoint;
}

/** The bar is seen to turn this far before the target can first be met … */
const LEAD_RAD = Math.PI;
/** … unless the target would begin farther out than this share of the bar's reach. */
const MOST_LEAD_SHARE = 0.55;

/**
 * Follow one approach to its end.
 * @param phaseRad how far the bar has turned from how it is drawn, in the sense of its spin, when the target comes
 *   within reach
 */
export function approachOf(
  profile: BiteProfile,
  speeds: { readonly closingMPerS: number; readonly radPerS: number },
  phaseRad: number,
): Approach {
  const advanceMm = Math.max(advanceMmPerRad(speeds), 1e-6 * profile.rimMm);
  const contact = contactAt(profile, advanceMm, phaseRad);
  const before = Math.min(LEAD_RAD, (MOST_LEAD_SHARE * profile.maxRadiusMm) / advanceMm);
  return { profile, advanceMm, contact, leadRad: before + contact.depthMm / advanceMm };
}

/** The picture at so many radians of the bar's turn before contact. */
export function sceneAt({ profile, advanceMm, contact }: Approach, beforeRad: number): Scene {
  const turned = contact.barTurnRad - beforeRad;
  const x = contact.alongMm + advanceMm * beforeRad;
  const { kind, offsetMm } = profile.target;
  const y = kind === "face" ? 0 : offsetMm;
  // A bar that turns clockwise is the mirror image of one that turns counter-clockwise.
  return profile.direction === "ccw"
    ? { barTurnRad: turned, targetAt: { x, y } }
    : { barTurnRad: -turned, targetAt: { x, y: -y } };
}

/** A point of the bar as drawn, where it stands when the bar is turned. */
export function turnedPoint({ x, y }: PlanePoint, turnRad: number): PlanePoint {
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return { x: cos * x - sin * y, y: sin * x + cos * y };
}

/** Slow enough to follow: about a turn of the bar in this time. */
const SHOWN_TURN_S = 3;

/** How many times slower than it happens an approach is shown: a round number, so that it can be said. */
export function slowdown(radPerS: number): number {
  const wanted = (radPerS * SHOWN_TURN_S) / TURN;
  const power = 10 ** Math.floor(Math.log10(Math.max(1, wanted)));
  const step = [5, 2, 1].find((digit) => wanted >= digit * power) ?? 1;
  return step * power;
}
