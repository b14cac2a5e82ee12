/**
 * The bite of a bar against an edge that comes straight at the spin axis: how deep it gets before the bar meets it, on
 * which part of the outline, and up to which closing speed only the square faces of the teeth do the meeting.
 */
export { advanceMmPerRad, type BiteCondition } from "./approach.ts";
export { type Bite, biteAt, type StruckBite } from "./bite-at.ts";
export { biteCurve } from "./bite-curve.ts";
export { biteProfile } from "./bite-profile.ts";
export { type CleanBite, cleanBite } from "./clean-bite.ts";
