/** An aim looked up: what the search moves, measures and keeps. */
import type { Analysis } from "../../analysis/analyse.ts";
import { requirementLabel, whyUnknown } from "../../analysis/judge.ts";
import { isJudgement, isObstacle } from "../../analysis/judgements.ts";
import type { Source } from "../../analysis/source.ts";
import { FIGURES } from "../../figures/catalogue.ts";
import type { AimDesign } from "../../language/design.ts";
import type { MovableLet } from "../movable-let.ts";
import { newProblems } from "../new-problems.ts";
import { type Variation, variationOf } from "../variation.ts";
import { withAim } from "./aim-source.ts";
import type { AimRequest, GoalStanding, LimitStanding, WhyNoAim } from "./aiming.ts";
import { type GoalScale, goalLabel, goalScale, goalStanding, goalValue } from "./goals.ts";
import {
  type AimLimit,
  excessOf,
  expectedGradeOf,
  limitStanding,
  limitsOf,
  smoothExcessOf,
} from "./limits.ts";
import type { Measured, Place } from "./rating.ts";

export interface AimTask {
  /** The file as it is. */
  readonly source: Source;
  readonly request: AimRequest;
  readonly variant: string | null;
  /** The bar as it is. */
  readonly start: Analysis;
  readonly lets: readonly MovableLet[];
  readonly goals: readonly GoalScale[];
  /** The values of the lets at a place, each in its own unit. */
  valuesAt(at: Place): readonly number[];
  placeOf(values: readonly number[]): Place;
  /** Null where the bar cannot be built, or a figure of the aim is not known. */
  measure(at: Place): Measured | null;
  /** How any bar of the file stands to the goals and limits. */
  standings(analysis: Analysis): {
    readonly goals: readonly GoalStanding[];
    readonly limits: readonly Omit<LimitStanding, "isReached">[];
  };
}

export interface Refused {
  readonly reason: WhyNoAim;
  readonly message: string;
}

/** Looks an aim up, or tells what keeps it from being searched for. */
export function aimTask(source: Source, request: AimRequest): AimTask | Refused {
  const { variant = null, settings = {} } = request;
  if (variant !== null && !source.variants.includes(variant))
    return { reason: "no-such-variant", message: `The file has no variant "${variant}".` };
  const stated = request.aim === undefined ? { source, start: 0 } : withAim(source, request.aim);
  const asIs = variationOf(stated.source, { names: [], variant, settings });
  if ("reason" in asIs) return asIs;
  const { aim } = asIs.start.design;
  if (aim === null) return noAim(asIs.start, request, stated.start);
  const obstacle = asIs.start.problems.find(isObstacle);
  if (obstacle || asIs.start.assessment.section === null)
    return {
      reason: "file-has-errors",
      message: `Mend the file's errors first${obstacle ? `: ${obstacle.message}` : "."}`,
    };
  const variation = variationOf(stated.source, { names: aim.names, variant, settings });
  if ("reason" in variation) return variation;
  return (
    boundless(variation) ?? unknownFigure(variation.start, aim) ?? taskOf(source, request, variation, aim)
  );
}

function noAim({ problems }: Analysis, { aim }: AimRequest, start: number): Refused {
  if (aim === undefined) {
    const message =
      "The file has no valid line 'aim', such as aim most inertia keeping mass <= 1.6 kg by tail.";
    return { reason: "no-aim", message };
  }
  const problem = problems.find(({ range }) => range.end >= start);
  return { reason: "bad-aim", message: problem?.message ?? "This is no aim, such as most inertia by tail." };
}

function boundless({ lets }: Variation): Refused | null {
  const found = lets.find(({ isBounded }) => !isBounded);
  return found
    ? { reason: "no-range", message: `'${found.name}' has no bounds that could be worked out.` }
    : null;
}

/** What is not known of the bar as it is, as without a spin, will not be known of another. */
function unknownFigure(start: Analysis, aim: AimDesign): Refused | null {
  const goal = aim.goals.find((candidate) => goalScale(candidate, start) === null);
  const limit = limitsOf(start, null).find((candidate) => excessOf(candidate, start) === null);
  const label = goal ? goalLabel(goal) : limit && limitLabel(limit);
  if (label === undefined) return null;
  return { reason: "unknown-figure", message: `${label} is not known: ${whyUnknown(start.assessment)}.` };
}

function limitLabel({ stated }: AimLimit): string {
  const figure = FIGURES.find(({ requirable }) => requirable?.name === stated.figure);
  return figure === undefined ? stated.figure : requirementLabel(stated, figure);
}

function taskOf(source: Source, request: AimRequest, variation: Variation, aim: AimDesign): AimTask {
  const { start, lets } = variation;
  const goals = aim.goals.flatMap((goal) => goalScale(goal, start) ?? []);
  const expectedGrade = expectedGradeOf(start);
  const limitCount = limitsOf(start, expectedGrade).length;
  const valuesAt = (at: Place) => lets.map(({ least, most }, i) => least + (most - least) * (at[i] ?? 0));
  return {
    source,
    request,
    variant: start.variant,
    start,
    lets,
    goals,
    valuesAt,
    placeOf: (values) => lets.map(({ least, most }, i) => ((values[i] ?? least) - least) / (most - least)),
    measure: (at) => {
      const analysis = variation.at(valuesAt(at));
      const limits = limitsOf(analysis, expectedGrade);
      // A limit that cannot be worked out with these values is no limit that holds.
      return limits.length === limitCount ? measured(start, analysis, goals, limits) : null;
    },
    standings: (analysis) => ({
      goals: goals.map((goal) => goalStanding(goal, analysis)),
      limits: limitsOf(analysis, expectedGrade).flatMap((limit) => limitStanding(limit, analysis) ?? []),
    }),
  };
}

function measured(
  start: Analysis,
  analysis: Analysis,
  scales: readonly GoalScale[],
  limits: readonly AimLimit[],
): Measured | null {
  if (analysis.assessment.section === null) return null;
  const goals = scales.flatMap((scale) => goalValue(scale, analysis) ?? []);
  const excess = limits.flatMap((limit) => excessOf(limit, analysis) ?? []);
  if (goals.length < scales.length || excess.length < limits.length) return null;
  let faults: number | null = null;
  return {
    goals,
    excess,
    smooth: limits.flatMap((limit, i) => smoothExcessOf(limit, excess[i] ?? 0, analysis)),
    faults: () => {
      // What is said of a limit is measured as its excess already.
      faults ??= newProblems([start], [analysis]).filter((problem) => !isJudgement(problem)).length;
      return faults;
    },
  };
}
