/** Judging a measured design: its requirements, and the balance that is expected where it requires none. */
import { meetingReachMm } from "../bite/bite.ts";
import type { Assessment } from "../figures/assessment.ts";
import { massToRemoveG } from "../figures/balance.ts";
import { FIGURES } from "../figures/catalogue.ts";
import type { Figure } from "../figures/figure.ts";
import { number, presentFigure, presentMeasure } from "../figures/present.ts";
import type { Requirement } from "../language/design.ts";
import type { Problem } from "../language/problem.ts";
import type { ProblemCode } from "../language/problem-codes.ts";
import { OF_EVENT, statedLimits } from "../language/stated-limits.ts";
import { advise } from "./advise.ts";
import { judgeBudget } from "./judge-budget.ts";
import { judgeRobot } from "./judge-robot.ts";

/** What the measured bar does not live up to. */
export function judge(assessment: Assessment): Problem[] {
  return [
    ...statedLimits(assessment.design).flatMap(
      (requirement) => judgeRequirement(requirement, assessment) ?? [],
    ),
    ...judgeExpectedBalance(assessment),
    ...judgeTarget(assessment),
    ...judgeBudget(assessment),
    ...judgeRobot(assessment),
    ...advise(assessment),
  ];
}

/** How a requirement stands: the value of its figure, its limit and the margin, all in the figure's own unit. */
export interface Standing {
  readonly figure: Figure;
  readonly value: number | null;
  readonly limit: number;
  readonly holds: boolean | null;
  /** Positive while the requirement holds. */
  readonly margin: number | null;
}

/** Where a requirement stands, for hovers and reports; `null` for a figure the catalogue does not know. */
export function standingOf(requirement: Requirement, assessment: Assessment): Standing | null {
  const figure = FIGURES.find((candidate) => candidate.requirable?.name === requirement.figure);
  if (!figure?.requirable) return null;
  const limit = requirement.limit.value / figure.requirable.baseFactor;
  const value = requiredValue(figure, requirement.atMPerS, assessment);
  if (value === null) return { figure, value, limit, holds: null, margin: null };
  const margin = requirement.relation === "<=" ? limit - value : value - limit;
  // A limit met to the last bits is met: 1e-12 is rounding, not metal.
  return { figure, value, limit, holds: margin >= -1e-12 * Math.abs(limit), margin };
}

/**
 * The value of a figure that can be required, in its own unit; null where it is not known.
 * @param atMPerS the closing speed of `bite at …`, else null
 */
export function requiredValue(figure: Figure, atMPerS: number | null, assessment: Assessment): number | null {
  if (atMPerS !== null) return assessment.bite?.at(atMPerS).maxMm ?? null;
  const value = figure.of(assessment);
  return typeof value === "number" ? value : null;
}

function judgeRequirement(requirement: Requirement, assessment: Assessment): Problem | null {
  const standing = standingOf(requirement, assessment);
  if (!standing || standing.holds) return null;
  const label = requirementLabel(requirement, standing.figure);
  if (standing.value === null)
    return {
      severity: "warning",
      code: "require-unknown",
      message: `${label} cannot be checked: ${whyUnknown(assessment, standing.figure)}.`,
      range: requirement.range,
      fixes: [],
    };
  return {
    severity: "error",
    code: failureCode(requirement),
    message: failureMessage(requirement, standing, label, assessment),
    range: requirement.range,
    fixes: [],
  };
}

/** What a requirement is called where people read it. */
export function requirementLabel(
  { atMPerS, isOfEvent }: Pick<Requirement, "atMPerS" | "isOfEvent">,
  figure: Figure,
): string {
  const label = atMPerS === null ? figure.label : `Bite at ${number(atMPerS, 4)} m/s`;
  return isOfEvent ? `${label}${OF_EVENT}` : label;
}

const EVENT_DECIDES = " The event's own rules and its inspectors decide.";

function failureCode({ figure, relation }: Requirement): ProblemCode {
  if (relation === "<=" && figure === "mass") return "mass-over-class";
  if (relation === "<=" && (figure === "balance" || figure === "imbalance")) return "imbalance-over-grade";
  return "require-failed";
}

function failureMessage(
  { relation, atMPerS, isOfEvent }: Requirement,
  { figure, value, limit, margin }: Standing,
  label: string,
  assessment: Assessment,
): string {
  const show = (amount: number) => {
    const measure = atMPerS === null ? figure.measure : "length";
    const { text, unit } = presentMeasure(measure ?? "count", amount, "mm");
    return unit ? `${text} ${unit}` : text;
  };
  const amiss = Math.abs(margin ?? 0);
  const percent = limit === 0 ? "" : ` (${number((100 * amiss) / Math.abs(limit), 2)} %)`;
  const side = relation === "<=" ? "over the limit of" : "under the least of";
  const advice =
    figure.key === "balanceGrade" || figure.key === "imbalanceGMm" ? lightenAdvice(assessment) : "";
  return `${label} is ${show(value ?? 0)}, ${side} ${show(limit)} by ${show(amiss)}${percent}.${advice}${isOfEvent ? EVENT_DECIDES : ""}`;
}

/**
 * What a figure that is not known would take, as the end of a sentence.
 * @param figure the one in question; null for those of the bar itself
 */
export function whyUnknown(
  { outline, mass, design, bite }: Assessment,
  figure: Figure | null = null,
): string {
  if (figure?.unknownBecause) return figure.unknownBecause;
  if (!outline) return "the outline could not be built";
  if (!mass) return "the mass is not known; give a thickness and a material";
  if (!design.spin) return "the file has no spin";
  if (!bite) return "the bite could not be computed for this target or outline";
  return "its figure is not known";
}

/** Where and how much metal to take off, as a builder would ask. */
function lightenAdvice({ mass, section }: Assessment): string {
  if (!mass || !section || mass.imbalanceDeg === null) return "";
  const radiusMm = section.maxRadiusMm / 2;
  const grams = massToRemoveG(mass.imbalanceGMm, radiusMm);
  const side = number(mass.imbalanceDeg, 3);
  return (
    ` The imbalance is ${number(mass.imbalanceGMm, 3)} g·mm with the heavy side at ${side}°;` +
    ` taking ${number(grams, 2)} g off at ${number(radiusMm, 3)} mm there would balance it.`
  );
}

function judgeExpectedBalance(assessment: Assessment): Problem[] {
  const { design, settings } = assessment;
  const stated = statedLimits(design).some(({ figure }) => figure === "balance" || figure === "imbalance");
  const figure = FIGURES.find(({ key }) => key === "balanceGrade");
  const grade = figure?.of(assessment);
  if (stated || !figure || typeof grade !== "number" || grade <= settings.balanceGrade) return [];
  const shown = presentFigure(figure, grade, "mm").text;
  return [
    {
      severity: "warning",
      code: "imbalance-over-grade",
      message:
        `Balance is ${shown} at ${number(design.spin?.rpm ?? 0, 6)} rpm, over G${settings.balanceGrade}.` +
        lightenAdvice(assessment),
      range: design.outline?.range ?? { start: 0, end: 0 },
      fixes: [],
    },
  ];
}

/** A line that misses the bar altogether has no bite to study. */
function judgeTarget({ design, bite, outline, section }: Assessment): Problem[] {
  const { offsetMm } = design.target;
  if (bite || !outline || !section || !design.spin) return [];
  const reachMm = meetingReachMm(design.target, section.maxRadiusMm);
  if (Math.abs(offsetMm) < reachMm) return [];
  return [
    {
      severity: "warning",
      code: "target-passes",
      message:
        `The target's line passes ${number(Math.abs(offsetMm), 4)} mm from the spin axis and the bar reaches` +
        ` ${number(reachMm, 4)} mm: they never meet. Give an offset below that.`,
      range: design.outline?.range ?? { start: 0, end: 0 },
      fixes: [],
    },
  ];
}
