/** Judging the weigh-in budget: over the limit, a part that is counted twice, a sum that cannot be done. */
import type { Assessment } from "../figures/assessment.ts";
import { type BudgetSums, budgetSums, type LeftOff, leaveOff, partMassKg } from "../figures/budget.ts";
import { number, presentMeasure } from "../figures/present.ts";
import type { BudgetDesign, BudgetPart } from "../language/design.ts";
import type { Problem } from "../language/problem.ts";
import type { ProblemCode } from "../language/problem-codes.ts";
import type { TextRange } from "../language/text.ts";

/** What is wrong or doubtful with the budget; nothing for a file without one. */
export function judgeBudget(assessment: Assessment): Problem[] {
  const { budget } = assessment.design;
  const sums = budgetSums(assessment);
  if (budget === null || sums === null) return [];
  return [
    ...judgeTotal(budget, sums, assessment),
    ...judgeScale(budget),
    ...budget.parts.flatMap((part, i) => judgePart(part, budget.parts.slice(0, i), assessment)),
  ];
}

function judgeTotal(budget: BudgetDesign, sums: BudgetSums, { mass }: Assessment): Problem[] {
  const { limitKg: limit, keyword } = budget;
  const { totalMassKg, partsMassKg, marginKg } = sums;
  if (partsMassKg === null) return [];
  if (mass === null || totalMassKg === null) {
    const message = "The budget cannot be added up: the mass of the bar is not known.";
    return [problem("warning", "budget-unknown", keyword, message)];
  }
  if (limit === null || marginKg === null || !isOver(marginKg, limit.value)) return [];
  const sum = `the bar by its outline ${shown(mass.massKg)}, its parts ${shown(partsMassKg)}`;
  const head = `The robot comes to ${shown(totalMassKg)} (${sum}), ${overText(limit.value, -marginKg)}.`;
  return [problem("error", "budget-over-limit", limit.range, `${head}${savingText(budget, marginKg)}`)];
}

/** A scale decides at the weigh-in, whatever the parts add up to. */
function judgeScale({ limitKg: limit, scaleKg: scale }: BudgetDesign): Problem[] {
  if (limit === null || scale === null || !isOver(limit.value - scale.value, limit.value)) return [];
  const message = `The scale reads ${shown(scale.value)}, ${overText(limit.value, scale.value - limit.value)}.`;
  return [problem("error", "budget-over-limit", scale.range, message)];
}

/** A limit met to the last bits is met. */
function isOver(marginKg: number, limitKg: number): boolean {
  return marginKg < -1e-12 * limitKg;
}

function overText(limitKg: number, overKg: number): string {
  return `over the limit of ${shown(limitKg)} by ${shown(overKg)} (${number((100 * overKg) / limitKg, 2)} %)`;
}

/** Which spare parts would have to stay off: the least that does alone, else the heaviest until it is enough. */
function savingText(budget: BudgetDesign, marginKg: number): string {
  if (!budget.parts.some(({ isSpare }) => isSpare))
    return " Mark the parts that it can do without as spare, to be told which of them would do.";
  const off = leaveOff(budget, marginKg);
  const alone = off.filter((one) => (one.marginKg ?? -1) >= 0).at(-1);
  if (alone !== undefined) return withoutText([alone], marginKg);
  const needed: LeftOff[] = [];
  for (const one of off) {
    needed.push(one);
    if (marginKg + savedKg(needed) >= 0) return withoutText(needed, marginKg);
  }
  return ` All its spare parts together save only ${shown(savedKg(off))}.`;
}

function withoutText(off: readonly LeftOff[], marginKg: number): string {
  const names = off.map(({ part }) => `"${part.name}"`);
  const last = names.at(-1) ?? "";
  const all = names.length > 1 ? `${names.slice(0, -1).join(", ")} and ${last}` : last;
  const saved = savedKg(off);
  return ` Without ${all} (${shown(saved)}) it would have ${shown(marginKg + saved)} to spare.`;
}

function savedKg(off: readonly LeftOff[]): number {
  return off.reduce((sum, { savesKg }) => sum + savesKg, 0);
}

function judgePart(part: BudgetPart, before: readonly BudgetPart[], assessment: Assessment): Problem[] {
  const name = plain(part.name);
  if (seemsTheBar(part, assessment)) {
    const message =
      `"${part.name}" seems to be the bar of this file, which counts by itself with the mass of its outline;` +
      " if it is, leave the part out.";
    return [problem("warning", "budget-counts-bar", part.range, message)];
  }
  if (name === "" || !before.some((other) => plain(other.name) === name)) return [];
  const message = `There is a part "${part.name}" already; both count. Several of a kind are written with count.`;
  return [problem("warning", "duplicate-part", part.range, message)];
}

/** What builders call the bar. */
const BAR_NAMES: readonly string[] = [
  "bar",
  "the bar",
  "weapon",
  "weapon bar",
  "weapon blade",
  "blade",
  "spinner",
  "spinner bar",
  "spinning bar",
];
const BAR_WORD = /\b(?:bar|blade|spinner|weapon)\b/;
/** A part weighed on a kitchen scale and the same part by its outline differ by so much at most. */
const SAME_MASS_SHARE = 0.02;

/** By its name alone, or by a name that speaks of the bar and its mass: a weapon motor of the same mass is rare. */
function seemsTheBar(part: BudgetPart, { design, mass }: Assessment): boolean {
  const name = plain(part.name);
  const barName = plain(design.name ?? "");
  if (BAR_NAMES.includes(name) || (barName !== "" && name === barName)) return true;
  const isAsHeavy = mass !== null && Math.abs(partMassKg(part) / mass.massKg - 1) <= SAME_MASS_SHARE;
  return isAsHeavy && BAR_WORD.test(name);
}

function plain(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, " ");
}

function shown(massKg: number): string {
  const { text, unit } = presentMeasure("mass", massKg, "mm");
  return `${text} ${unit}`;
}

function problem(
  severity: Problem["severity"],
  code: ProblemCode,
  { start, end }: TextRange,
  message: string,
): Problem {
  return { severity, code, message, range: { start, end }, fixes: [] };
}
