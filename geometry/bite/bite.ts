/**
 * The bite of a bar against a target: how deep it gets before the bar meets it, on which part of the outline, and up
 * to which closing speed only the square faces of the teeth do the meeting.
 */
export { advanceMmPerRad, type BiteCondition, closingMPerS } from "./approach.ts";
export { type Bite, biteAt, depthsOfBite, type StruckBite } from "./bite-at.ts";
export { type BitePoint, biteCurve } from "./bite-curve.ts";
export {
  type BiteProfile,
  biteProfile,
  isPlainEdge,
  meetingReachMm,
  PLAIN_EDGE,
} from "./bite-profile.ts";
export { type BarPart, cleanBite, type OtherStrike, type SpeedLimit, teethOnly } from "./clean-bite.ts";
export { type Contact, contactAt } from "./contact.ts";
export type { DepthDistribution } from "./depth-distribution.ts";
export type { Place } from "./offered.ts";
export { type ShortTooth, shortTeeth } from "./short-teeth.ts";
export { type KindOfStrike, STRIKE_KINDS, type StrikeKind, strikesByKind } from "./strike-kinds.ts";
export type { Range, Strike } from "./strikes.ts";
export { advanceForDepth, closingForDepth, spinForDepth } from "./turned-round.ts";
