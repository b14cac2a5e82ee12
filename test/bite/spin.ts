/** What the bite tests have in common. */
import {
  type BiteCondition,
  biteAt,
  biteProfile,
  cleanBite,
  type StruckBite,
} from "../../geometry/bite/bite.ts";
import type { SpinDirection } from "../../geometry/language/tree.ts";
import type { Loop } from "../../geometry/outline/segment.ts";
import type { Pair } from "../support/loops.ts";

/** 4200 turns a minute. */
export const RAD_PER_S = (4200 * 2 * Math.PI) / 60;
const TURNS_PER_S = 70;
export const SQUARE_RAD = (35 * Math.PI) / 180;
const MM = 1000;

export const SPIN: Omit<BiteCondition, "closingMPerS"> = { radPerS: RAD_PER_S, squareStrikeRad: SQUARE_RAD };

export function biteOf(outer: Loop, direction: SpinDirection, closingMPerS: number): StruckBite {
  return biteAt(biteProfile(outer, direction), { ...SPIN, closingMPerS });
}

export function cleanOf(outer: Loop, direction: SpinDirection = "ccw") {
  return cleanBite(biteProfile(outer, direction), SPIN);
}

/** The advance of a closing speed, mm a turn. */
export const mmPerTurn = (closingMPerS: number): number => (closingMPerS * MM) / TURNS_PER_S;
/** The closing speed of an advance of so many mm a turn. */
export const speedOf = (perTurn: number): number => (perTurn * TURNS_PER_S) / MM;

/**
 * The point at a radius, `turns` of a turn behind the x axis: what a bar turning counter-clockwise offers
 * later.
 */
export function behind(radius: number, turns: number): Pair {
  const angle = -2 * Math.PI * turns;
  return [radius * Math.cos(angle), radius * Math.sin(angle)];
}

/** Points given in the order they are offered, as the counter-clockwise loop they make. */
export const offered = (points: readonly Pair[]): Pair[] => [...points].reverse();
