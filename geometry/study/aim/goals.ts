/** The goals of an aim: what they are called, and what they come to. */
import type { Analysis } from "../../analysis/analyse.ts";
import { requiredValue, requirementLabel } from "../../analysis/judge.ts";
import { FIGURES } from "../../figures/catalogue.ts";
import type { Figure } from "../../figures/figure.ts";
import type { Goal } from "../../language/design.ts";
import type { GoalStanding, Told } from "./aiming.ts";
import { isOfCentroid } from "./limits.ts";
import type { GoalValue } from "./rating.ts";

/** A goal as a number to be made small. */
export interface GoalScale {
  readonly goal: Goal;
  readonly told: Told;
  /** Of the bar as it is, in the unit of the figure's key. */
  readonly before: number;
  /** A value of the figure, as the search counts it: about 1 in size. */
  scaled(value: number): number;
  /** And back. */
  shown(scaled: number): number;
  /** Without the kink that a balance has where it is perfect. */
  smooth(scaled: number): number;
}

/** The scale of a goal for a bar; null where its figure is not known there. */
export function goalScale(goal: Goal, start: Analysis): GoalScale | null {
  const figure = FIGURES.find(({ requirable }) => requirable?.name === goal.figure);
  const before = figure && requiredValue(figure, goal.atMPerS, start.assessment);
  if (figure === undefined || before == null) return null;
  const sign = goal.sense === "most" ? -1 : 1;
  const scale = sign * (Math.abs(before) || 1);
  const isKinked = isOfCentroid(goal.figure) && goal.sense === "least";
  return {
    goal,
    told: toldOf(figure, goal),
    before,
    scaled: (value) => value / scale,
    shown: (scaled) => scaled * scale,
    smooth: (scaled) => (isKinked ? scaled ** 2 : scaled),
  };
}

export function goalLabel({ figure: name, atMPerS }: Goal): string {
  const figure = FIGURES.find(({ requirable }) => requirable?.name === name);
  return figure === undefined ? name : requirementLabel({ atMPerS }, figure);
}

function toldOf(figure: Figure, goal: Goal): Told {
  const measure = goal.atMPerS === null ? (figure.measure ?? "count") : "length";
  return { figure, label: goalLabel(goal), measure };
}

/** What a bar comes to; null where the figure is not known. */
export function goalValue(
  { told, goal, scaled, smooth }: GoalScale,
  { assessment }: Analysis,
): GoalValue | null {
  const value = requiredValue(told.figure, goal.atMPerS, assessment);
  if (value === null) return null;
  return { value: scaled(value), smooth: smooth(scaled(value)) };
}

export function goalStanding({ told, goal, before }: GoalScale, { assessment }: Analysis): GoalStanding {
  const { sense, atMPerS } = goal;
  return { ...told, sense, atMPerS, before, after: requiredValue(told.figure, atMPerS, assessment) };
}
